using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.App.Console;
using LoggerBox.Host.Live;

namespace LoggerBox.App.Watching;

/// <summary>One line a second, and at each change of a word: for a pipe, a log, a terminal that can't be drawn on.</summary>
internal sealed class PlainLines(Terminal terminal) : IWatchDisplay
{
    private readonly Pace pace = new(TimeSpan.FromSeconds(1), TimeProvider.System);

    public void Show(LiveMoment moment)
    {
        if (pace.IsDue(moment))
        {
            terminal.Out.WriteLine(Line(moment));
        }
    }

    public void Tell(string sentence) => terminal.Error.WriteLine(sentence);

    public static string Line(LiveMoment moment)
    {
        string time = moment.Seconds.ToString("F1", CultureInfo.InvariantCulture).PadLeft(7) + " s";
        IEnumerable<string> parts = moment.Recording
            ? [ReadingText.Of(moment.Speed), .. moment.Pressures.Select(ReadingText.Of), moment.GearWord, moment.Doing, moment.Clock]
            : [moment.Sentence];
        return string.Join("  ", parts.Prepend(time).Append(moment.CueText).Where(part => part.Length > 0));
    }
}
