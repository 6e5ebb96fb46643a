using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Checking;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>Each pressure against the sheet's limit, whether a clutch fills at all, how main follows speed, how much pressures scatter.</summary>
public static class PressureObservations
{
    /// <summary>Gears of one step mostly see the same thing three times: together they count about twice.</summary>
    private const double Shared = 0.6;

    private const double GrossFactor = 0.65;

    /// <summary>Converter pressure at idle beside that at the hold where the manual prints only one of them; common practice, no source.</summary>
    private const double UsualIdlePart = 0.57;

    private static readonly (Observation Observation, Step Step, int Channel)[] Cells =
    [
        (Observation.MainIdleNeutral, Step.IdleNeutral, Channel.Main),
        (Observation.MainIdleForward, Step.IdleForward, Channel.Main),
        (Observation.MainIdleReverse, Step.IdleReverse, Channel.Main),
        (Observation.MainHoldNeutral, Step.HoldNeutral, Channel.Main),
        (Observation.MainHoldForward, Step.HoldForward, Channel.Main),
        (Observation.MainHoldReverse, Step.HoldReverse, Channel.Main),
        (Observation.ClutchIdleForward, Step.IdleForward, Channel.Clutch),
        (Observation.ClutchIdleReverse, Step.IdleReverse, Channel.Clutch),
        (Observation.ClutchHoldForward, Step.HoldForward, Channel.Clutch),
        (Observation.ClutchHoldReverse, Step.HoldReverse, Channel.Clutch),
        (Observation.ConverterHoldNeutral, Step.HoldNeutral, Channel.Converter),
        (Observation.ConverterHoldForward, Step.HoldForward, Channel.Converter),
        (Observation.ConverterHoldReverse, Step.HoldReverse, Channel.Converter),
    ];

    public static IEnumerable<Observed?> Of(Evidence evidence, Roles roles, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(roles);
        foreach (var (observation, step, channel) in Cells)
        {
            yield return Cell(evidence, roles, observation, step, channel, unit);
        }

        yield return Filled(roles, evidence, Observation.ClutchFilledForward, Gear.Forward, unit);
        yield return Filled(roles, evidence, Observation.ClutchFilledReverse, Gear.Reverse, unit);
        yield return MainOverSpeed(evidence, unit);
        yield return Scatter(evidence);
        yield return ConverterOverSpeed(evidence, unit);
    }

    private static Observed? Cell(Evidence evidence, Roles roles, Observation observation, Step step, int channel, PressureUnit unit)
    {
        if (roles.Of(step) is not { } hold || hold.Of(channel) is not { } pascal)
        {
            return null;
        }

        var limit = StepLimits.Of(StepLimits.Pressures(evidence.Sheet, step), channel)
            ?? (hold.Rpm is { } rpm && StepLimits.Row(evidence.Sheet, rpm.Value) is { } row ? StepLimits.Of(row, channel, step) : null);
        if (limit is null)
        {
            return null;
        }

        double factor = evidence.Sheet.Unit.InPascal() / unit.InPascal();
        var shown = limit with { Min = limit.Min * factor, Max = limit.Max * factor };
        return LimitObservation.Of(
            observation,
            $"{Words.ChannelName(channel)} at {Words.StepName(step)}",
            pascal.Scaled(1 / unit.InPascal()),
            shown,
            Words.Format(unit),
            Words.Name(unit),
            GrossFactor * (shown.Min ?? 0),
            (2 - GrossFactor) * (shown.Max ?? double.MaxValue / 4),
            Shared);
    }

    private static Observed? Filled(Roles roles, Evidence evidence, Observation observation, Gear gear, PressureUnit unit)
    {
        var steps = gear == Gear.Forward
            ? new[] { Step.IdleForward, Step.HoldForward, Step.StallForward }
            : [Step.IdleReverse, Step.HoldReverse, Step.StallReverse];

        // A stall alone without clutch pressure is the brake on the inching valve; idle or hold without it is a clutch that stays empty.
        var holds = steps.Take(2).Select(roles.OfAny).Where(hold => hold?.Clutch is not null).Select(hold => hold!).ToList();
        if (holds.Count == 0)
        {
            return null;
        }

        bool empty = holds.All(HoldGates.ClutchIsEmpty) || evidence.NeverFilled(gear);
        var reading = holds[^1];
        return new Observed(
            observation,
            empty ? [1, 0, 0, 0, 0] : [0, 0, 1, 0, 0],
            empty,
            $"{Words.ChannelName(Channel.Clutch)} at {Words.StepName(reading.Step)} {Words.Pressure(reading.Clutch!, unit)}");
    }

    // Main rises a little with speed as the regulator passes more oil; where it falls, the pump draws air or is starved.
    private static Observed? MainOverSpeed(Evidence evidence, PressureUnit unit)
    {
        const double usualRise = 0.10;
        if (evidence.Steps.Good(Step.Governed)?.Main is not { } fast || evidence.Steps.Good(Step.HoldNeutral)?.Main is not { } slow
            || fast.RelativeTo(slow) is not { } rise)
        {
            return null;
        }

        var off = new Measured(rise.Value - usualRise, rise.Budget);
        return new Observed(
            Observation.MainGovernedAgainstHold,
            Grading.Difference(off, 0.14, 0.35),
            off.Value < -0.18 - rise.Expanded,
            $"Main pressure {Words.Pressure(slow, unit)} at the hold in N and {Words.Pressure(fast, unit)} at governed speed");
    }

    // The converter takes what the regulator spills. A weak pump spills nothing at idle first, a clogged strainer at speed first;
    // an open relief or drilling takes the same part at either.
    private static Observed? ConverterOverSpeed(Evidence evidence, PressureUnit unit)
    {
        double usual = SheetRatio(evidence) ?? UsualIdlePart;
        if (evidence.Steps.Good(Step.IdleNeutral)?.Converter is not { } idle || evidence.Steps.Good(Step.HoldNeutral)?.Converter is not { } hold
            || hold.Value < 5_000 || idle.OfOneSensor.Scaled(1 / usual).RelativeTo(hold.OfOneSensor) is not { } ratio)
        {
            return null;
        }

        return new Observed(
            Observation.ConverterIdleAgainstHold,
            Grading.Difference(ratio, 0.3, 0.7),
            false,
            $"Converter pressure {Words.Pressure(idle, unit)} at idle and {Words.Pressure(hold, unit)} at the hold in N");
    }

    // Where the manual prints converter pressure at both speeds, its own ratio is the usual one: circuits differ.
    private static double? SheetRatio(Evidence evidence)
    {
        double? idle = Middle(evidence.Sheet.Idle.For(Gear.Neutral).Converter);
        double? hold = Middle(evidence.Sheet.Hold.For(Gear.Neutral).Converter);
        return idle > 0 && hold > 0 ? idle / hold : null;
    }

    private static double? Middle(Limit? limit) => limit?.Nominal ?? ((limit?.Min + limit?.Max) / 2);

    private static Observed? Scatter(Evidence evidence)
    {
        var relative = evidence.Steps.All
            .Where(hold => hold.Step is Step.HoldNeutral or Step.HoldForward or Step.HoldReverse or Step.HoldInGear or Step.Governed && hold.Main is not null)
            .Where(hold => hold.Main!.Value > 100_000)
            .Select(hold => hold.Record.Readings[Channel.Main].DeviationHundredths / 100.0
                * Math.Abs(hold.Session.Header.Pressures[0].PascalPerCount()) / hold.Main!.Value)
            .Order()
            .ToList();
        if (relative.Count == 0)
        {
            return null;
        }

        var median = new Measured(relative[relative.Count / 2], new UncertaintyBudget());
        return new Observed(Observation.PressureScatter, Grading.Difference(median, 0.025, 0.06), false, $"Main pressure scatters by {median.Value * 100:0.0} % while it should stand still");
    }
}
