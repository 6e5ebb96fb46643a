using System;
using System.Collections.Generic;
using LoggerBox.Host.Report;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Live;

/// <summary>One moment at the truck: what is read, what is being done, what the logger signals.</summary>
/// <param name="Recording">Otherwise nothing is read just now.</param>
/// <param name="Seconds">Of the sample set, since the logger was switched on.</param>
/// <param name="Cue">None where the last one is no longer about what is being done.</param>
/// <param name="StallSecondsLeft">Until the pedal must be let go; null: no stall runs.</param>
/// <param name="CooldownSecondsLeft">Of the pause after a stall; null: none is needed.</param>
public sealed record LiveMoment(
    bool Recording,
    double Seconds,
    LiveFigure Speed,
    IReadOnlyList<LiveFigure> Pressures,
    Gear Gear,
    Step Step,
    Cue Cue,
    double? StallSecondsLeft,
    double? CooldownSecondsLeft,
    IReadOnlyList<Step> Captured)
{
    // A figure that jumps with every reading cannot be read.
    private const int RoundedRpm = 10;

    /// <summary>The engine stands at a speed, and what for is not sure yet.</summary>
    public bool IsUnnamed { get; init; }

    /// <summary>The step that was captured last; none where that is not known.</summary>
    public Step CapturedLast { get; init; }

    /// <summary>What is the matter; empty while readings come.</summary>
    public string Sentence => Recording ? "" : "The logger is connected and records nothing just now.";

    public string GearWord => StepWords.Of(Gear);

    /// <summary>The step that is recognised, or gear and speed while its name may still change; empty where there is none.</summary>
    public string Doing =>
        Step != Step.None ? StepWords.Of(Step)
        : IsUnnamed && Speed.Value is double rpm ? FormattableString.Invariant($"{(Gear == Gear.Unknown ? "steady" : GearWord)}, {Math.Round(rpm / RoundedRpm) * RoundedRpm:0} rpm")
        : "";

    /// <summary>What to do next, or what was done; empty where the logger signals nothing.</summary>
    public string CueText => Cue == Cue.Captured && CapturedLast != Step.None ? $"{CueWords.Of(Cue)}: {StepWords.Of(CapturedLast).ToLowerInvariant()}" : CueWords.Of(Cue);

    /// <summary>What runs out just now; empty where nothing does.</summary>
    public string Clock =>
        StallSecondsLeft is double left ? $"Stall: {Figure.Seconds(left)} s left"
        : CooldownSecondsLeft is double pause ? $"Cool down: {(int)pause} s left"
        : "";
}
