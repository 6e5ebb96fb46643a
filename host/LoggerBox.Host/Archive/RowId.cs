using System;
using System.Globalization;

namespace LoggerBox.Host.Archive;

/// <summary>The ids that people see and type: a letter for the kind, then the row's number (S1, J1).</summary>
public static class RowId
{
    public static string Session(long row) => "S" + row.ToString(CultureInfo.InvariantCulture);

    public static string Job(long row) => "J" + row.ToString(CultureInfo.InvariantCulture);

    public static bool IsSession(string text) => TryParse(text, 'S', out _);

    public static bool IsJob(string text) => TryParse(text, 'J', out _);

    /// <summary>Small letters are taken too; anything but a letter and a number from 1 is no id.</summary>
    internal static bool TryParse(string text, char kind, out long row)
    {
        row = 0;
        return text.Length > 1
            && char.ToUpperInvariant(text[0]) == kind
            && long.TryParse(text.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out row)
            && row > 0;
    }
}
