using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Cues;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report.Card;

/// <summary>One signal of the logger and what it means.</summary>
/// <param name="Display">Four places; empty where the running readout stays.</param>
/// <param name="Sounder">Tenths of a second, # on; likewise the lamp.</param>
/// <param name="Urgent">Let go now, or do not go on.</param>
public sealed record CardCue(string Display, string Sounder, string Lamp, bool Repeats, bool Urgent, string Means)
{
    /// <summary>What a counting word shows as an example.</summary>
    private const int ExampleNumber = 3;

    private const int UrgentRank = 8;

    // Of the logger itself: whoever sits in the seat can do nothing about it, and reads it in the shop.
    private static readonly Cue[] ForTheShop = [Cue.PlanChosen, Cue.ReadingsLost, Cue.ClockNotSet, Cue.SettingsDamaged, Cue.Restarted];

    /// <summary>Every signal that says something to the seat, the most urgent first.</summary>
    public static IReadOnlyList<CardCue> All() =>
    [
        .. CueTable.All.Where(signal => CueWords.Of(signal.Cue).Length > 0 && !ForTheShop.Contains(signal.Cue))
            .OrderByDescending(signal => signal.Rank)
            .Select(signal => new CardCue(
                signal.Display.Contains('#', StringComparison.Ordinal) ? DisplayWords.WithNumber(signal.Display, ExampleNumber) : signal.Display,
                signal.Sounder,
                signal.Lamp,
                signal.Repeats,
                signal.Rank >= UrgentRank,
                CueWords.Of(signal.Cue))),
    ];
}
