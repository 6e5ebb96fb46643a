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

/// <summary>Each pressure against the sheet's limit, whether a clutch fills at all, how much pressures scatter.</summary>
public static class PressureObservations
{
    /// <summary>Gears of one step mostly see the same thing three times: together they count about twice.</summary>
    private const double Shared = 0.6;

    private const double GrossFactor = 0.65;

    /// <summary>Deviation beside the pressure; pump ripple comes to less through a hose of usual length, foam to more. Common practice, no source.</summary>
    private const double UsualScatter = 0.015;

    private const double GrossScatter = 0.05;

    /// <summary>A pressure that goes with the square of a flow scatters twice as much as the flow.</summary>
    private const double ConverterPart = 0.5;

    private const double LeastPascal = 30_000;

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
            Observed? seen = Cell(evidence, roles, observation, step, channel, unit);
            yield return channel == Channel.Converter && seen is not { Telling: true }
                ? AtIdle(evidence, roles, observation, step, unit) ?? seen
                : seen;
        }

        yield return Filled(roles, Observation.ClutchFilledForward, Gear.Forward, unit);
        yield return Filled(roles, Observation.ClutchFilledReverse, Gear.Reverse, unit);
        yield return Scatter(evidence);
    }

    // Converter pressure at idle has no cell of its own: where it alone is out of its limits it speaks for the gear.
    private static Observed? AtIdle(Evidence evidence, Roles roles, Observation observation, Step hold, PressureUnit unit)
    {
        Step idle = hold switch
        {
            Step.HoldNeutral => Step.IdleNeutral,
            Step.HoldForward => Step.IdleForward,
            _ => Step.IdleReverse,
        };
        return Cell(evidence, roles, observation, idle, Channel.Converter, unit) is { Telling: true } seen ? seen : null;
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
            Sentences.ReadingName(Words.ChannelName(channel), roles.Name(step)),
            pascal.Scaled(1 / unit.InPascal()),
            shown,
            Words.Format(unit),
            Words.Name(unit),
            GrossFactor * (shown.Min ?? 0),
            (2 - GrossFactor) * (shown.Max ?? double.MaxValue / 4),
            Shared);
    }

    private static Observed? Filled(Roles roles, Observation observation, Gear gear, PressureUnit unit)
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

        bool empty = holds.All(HoldGates.ClutchIsEmpty);
        bool hardly = holds.All(ClutchFilling.IsHardly);
        var reading = holds[^1];
        return new Observed(
            observation,
            empty ? [1, 0, 0, 0, 0] : hardly ? [0, 1, 0, 0, 0] : [0, 0, 1, 0, 0],
            empty,
            $"{Sentences.ReadingName(Words.ChannelName(Channel.Clutch), Words.StepName(reading.Step))} {Words.Pressure(reading.Clutch!, unit)}");
    }

    // What foam takes from the pump's flow by turns is missing in the converter first, which gets what main does not need.
    private static Observed? Scatter(Evidence evidence)
    {
        var relative = evidence.Steps.All
            .Where(hold => hold.Step is Step.HoldNeutral or Step.HoldForward or Step.HoldReverse or Step.HoldInGear or Step.Governed && hold.Main is { Value: > 100_000 })
            .Select(hold => Math.Max(Deviation(hold, Channel.Main), ConverterPart * Deviation(hold, Channel.Converter)))
            .Order()
            .ToList();
        if (relative.Count == 0)
        {
            return null;
        }

        var median = new Measured(relative[relative.Count / 2], new UncertaintyBudget());
        return new Observed(Observation.PressureScatter, Grading.Difference(median, UsualScatter, GrossScatter), false, Sentences.Scatter(median.Value));
    }

    /// <summary>Beside the pressure itself; 0 where there is too little of it to say.</summary>
    private static double Deviation(MeasuredHold hold, int channel) => hold.Of(channel) is { Value: > LeastPascal } pressure
        ? hold.Record.Readings[channel].DeviationHundredths / 100.0 * Math.Abs(hold.Session.Header.Pressures[channel - 1].PascalPerCount()) / pressure.Value
        : 0;
}
