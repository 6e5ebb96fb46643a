using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// Which hold plays which part. Where the gears are not known, the worse of two holds in gear stands in for forward:
/// what is then said of the forward clutch goes for the reverse one as well.
/// </summary>
public sealed class Roles
{
    /// <summary>Two clutches of a sound truck stand closer than this beside main pressure.</summary>
    private const double OtherClutch = 0.8;

    private readonly StepReadings steps;

    public Roles(StepReadings steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        this.steps = steps;
        GearsUnknown = steps.All.Any(hold => hold.Step is Step.IdleInGear or Step.HoldInGear or Step.StallInGear);
    }

    public bool GearsUnknown { get; }

    public MeasuredHold? Of(Step step) => (steps.Good(step) ?? StandIn(step))?.OfRunningEngine;

    /// <summary>With its gate's code even where void: that there was no clutch pressure is a finding, too.</summary>
    public MeasuredHold? OfAny(Step step) => Of(step) ?? steps.Void(step);

    /// <summary>The step as it is said: the gear is never made up.</summary>
    public string Name(Step step) =>
        steps.Good(step) is null && StandIn(step) is not null ? Words.StepNameOfSomeGear(step) : Words.StepName(step);

    private MeasuredHold? StandIn(Step step)
    {
        var (inGear, worse) = step switch
        {
            Step.IdleForward => (Step.IdleInGear, true),
            Step.IdleReverse => (Step.IdleInGear, false),
            Step.HoldForward => (Step.HoldInGear, true),
            Step.HoldReverse => (Step.HoldInGear, false),
            Step.StallForward => (Step.StallInGear, true),
            Step.StallReverse => (Step.StallInGear, false),
            _ => (Step.None, false),
        };
        var pair = inGear == Step.None ? [] : Pair(inGear);
        return pair.Count switch
        {
            0 => null,
            1 => worse != IsOfTheBetterClutch(pair[0]) ? pair[0] : null,
            _ => worse ? pair[0] : pair[1],
        };
    }

    private List<MeasuredHold> Pair(Step inGear) => [.. steps.GoodInGear(inGear).OrderBy(Soundness)];

    /// <summary>One hold alone, of a session in which two clutches filled differently beside main: it is of the clutch that it resembles.</summary>
    private bool IsOfTheBetterClutch(MeasuredHold alone)
    {
        foreach (var step in new[] { Step.IdleInGear, Step.HoldInGear })
        {
            if (Pair(step) is [var worse, var better] && ClutchFilling.Part(worse) is { } low && ClutchFilling.Part(better) is { } high && low < OtherClutch * high)
            {
                return ClutchFilling.Part(alone) > (low + high) / 2;
            }
        }

        return false;
    }

    /// <summary>Lower pressures or a higher stall are the worse.</summary>
    private static double Soundness(MeasuredHold hold) => HoldGates(hold)
        ? -(hold.Rpm?.Value ?? 0)
        : (hold.Converter?.Value ?? 0) + (hold.Clutch?.Value ?? 0) + (hold.Main?.Value ?? 0);

    private static bool HoldGates(MeasuredHold hold) => Validity.HoldGates.IsStall(hold.Step);
}
