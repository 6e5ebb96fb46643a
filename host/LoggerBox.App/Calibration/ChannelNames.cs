using System.Collections.Generic;
using LoggerBox.Protocol.Records;

namespace LoggerBox.App.Calibration;

/// <summary>The pressure channels as they are typed.</summary>
internal static class ChannelNames
{
    public static IReadOnlyList<string> All { get; } = ["main", "clutch", "converter"];

    public static string Of(int channel) => All[channel - Channel.Main];

    /// <summary>0: it is none.</summary>
    public static int Find(string name)
    {
        for (int i = 0; i < All.Count; i++)
        {
            if (All[i] == name)
            {
                return Channel.Main + i;
            }
        }

        return 0;
    }
}
