using System.Collections.Generic;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging;

/// <summary>What is said of a session or job. Pressures in <see cref="Unit"/>, speeds in rpm, times in seconds from the recording's start.</summary>
public sealed record Judgement(
    string Rules,
    PressureUnit Unit,
    string Truck,
    string SheetName,
    string SheetSource,
    IReadOnlyList<ValidityNote> Validity,
    IReadOnlyList<JudgedHold> Holds,
    IReadOnlyList<JudgedEngagement> Engagements,
    IReadOnlyList<Check> Checks,
    IReadOnlyList<Suspect> Suspects,
    IReadOnlyList<NotCovered> NotCovered)
{
    /// <summary>Which version of the sheet it was; empty where the sheet was no file.</summary>
    public string SheetVersion { get; init; } = "";

    /// <summary>Empty where the sheet says nothing of the converter.</summary>
    public IReadOnlyList<StallHeat> StallHeats { get; init; } = [];
}

public enum ValidityEffect
{
    Note,
    Void,
}

/// <param name="Step">The step it speaks of; None where it speaks of the whole.</param>
public sealed record ValidityNote(string Code, ValidityEffect Effect, Step Step, string Text);

/// <param name="Counts">Whether it is the last good one of its step, the one that is judged.</param>
public sealed record JudgedHold(
    Step Step,
    Gear Gear,
    double StartSeconds,
    double DurationSeconds,
    bool Counts,
    Reading? Rpm,
    Reading? Main,
    Reading? Clutch,
    Reading? Converter);

/// <param name="Uncertainty">Expanded, 95.45 %.</param>
public sealed record Reading(double Settled, double Peak, double Uncertainty);

public sealed record JudgedEngagement(
    Gear Gear,
    double StartSeconds,
    double? FillSeconds,
    double? RiseSeconds,
    double? TotalSeconds,
    double? OvershootPercent)
{
    /// <summary>Which of several recordings it is of, from 1, in order of time; null where there is one.</summary>
    public int? Recording { get; init; }
}

public enum Verdict
{
    In,
    Low,
    High,
    CloseLow,
    CloseHigh,
    NotMeasured,
    Void,
}

/// <summary>One reading against one limit.</summary>
/// <param name="Step">Written code: a step's, or engage-F, engage-R.</param>
/// <param name="Unit">"rpm", "s" or the pressure unit's code.</param>
public sealed record Check(
    string Step,
    string Quantity,
    double? Value,
    double? Uncertainty,
    string Unit,
    double? Min,
    double? Max,
    Verdict Verdict);

/// <param name="Next">The cheapest check that separates it from its neighbours.</param>
public sealed record Suspect(
    string Code,
    int Rank,
    double Score,
    IReadOnlyList<string> For,
    IReadOnlyList<string> Against,
    string Next);

public sealed record NotCovered(string Code, string Text, string Next);
