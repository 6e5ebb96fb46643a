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
    string State, string Sentence, ShownFigure Speed, ShownFigure Main, ShownFigure Clutch, ShownFigure Converter, string Gear, string Doing, string Cue, string Clock, IReadOnlyList<string> Captured)
{
    public static LiveShown Trouble(string sentence) =>
        new("trouble", sentence, ShownFigure.None, ShownFigure.None, ShownFigure.None, ShownFigure.None, "", "", "", "", []);

    public static LiveShown Of(LiveMoment moment) => new(
        moment.Recording ? "reading" : "waiting",
        moment.Sentence,
        ShownFigure.Of(moment.Speed),
        ShownFigure.Of(moment.Pressures[0]),
        ShownFigure.Of(moment.Pressures[1]),
        ShownFigure.Of(moment.Pressures[2]),
        moment.GearWord,
        moment.Doing,
        moment.CueText,
        moment.Clock,
        [.. moment.Captured.Select(step => StepWords.Of(step))]);
}
