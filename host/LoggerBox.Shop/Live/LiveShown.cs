using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Live;
using LoggerBox.Host.Report;

namespace LoggerBox.Shop.Live;

/// <summary>One moment as the live page shows it: figures and words, ready to be put in their places.</summary>
/// <param name="State">"reading", "waiting" (connected, and nothing is recorded), or "trouble".</param>
/// <param name="Sentence">What is the matter, or what to do next.</param>
/// <param name="Clock">The stall's or the pause's seconds; empty where neither runs.</param>
internal sealed record LiveShown(
    string State, string Sentence, string Speed, string Main, string Clutch, string Converter, string Gear, string Doing, string Cue, string Clock, IReadOnlyList<string> Captured)
{
    public static LiveShown Trouble(string sentence) =>
        new("trouble", sentence, LiveFigure.NoReading, LiveFigure.NoReading, LiveFigure.NoReading, LiveFigure.NoReading, "", "", "", "", []);

    public static LiveShown Of(LiveMoment moment) => new(
        moment.Recording ? "reading" : "waiting",
        moment.Sentence,
        moment.Speed.Text,
        moment.Pressures[0].Text,
        moment.Pressures[1].Text,
        moment.Pressures[2].Text,
        moment.GearWord,
        moment.Doing,
        moment.CueText,
        moment.Clock,
        [.. moment.Captured.Select(step => StepWords.Of(step))]);
}
