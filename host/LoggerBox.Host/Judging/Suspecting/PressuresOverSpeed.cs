using System;
using System.Collections.Generic;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Checking;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>How main and converter pressure follow engine speed in neutral: what a pump, its suction and a valve do differently.</summary>
public static class PressuresOverSpeed
{
    /// <summary>Converter pressure at idle beside that at the hold where the manual prints only one of them; common practice, no source.</summary>
    private const double UsualIdlePart = 0.57;

    private static readonly string Idle = "idle";
    private static readonly string Hold = Words.StepName(Step.HoldNeutral);
    private static readonly string Governed = Words.StepName(Step.Governed);

    public static IEnumerable<Observed?> Of(Evidence evidence, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        yield return MainIdleToHold(evidence, unit);
        yield return MainHoldToGoverned(evidence, unit);
        yield return ConverterIdleToHold(evidence, unit);
        yield return ConverterHoldToGoverned(evidence, unit);
    }

    // A worn pump loses most at idle, a weak regulator at speed, where the pump could give more.
    private static Observed? MainIdleToHold(Evidence evidence, PressureUnit unit)
    {
        if (SheetRatio(evidence, Channel.Main) is not { } usual
            || evidence.Steps.Good(Step.IdleNeutral)?.Main is not { } idle || evidence.Steps.Good(Step.HoldNeutral)?.Main is not { Value: > 20_000 } hold
            || idle.OfOneSensor.Scaled(1 / usual).RelativeTo(hold.OfOneSensor) is not { } ratio)
        {
            return null;
        }

        return new Observed(
            Observation.MainIdleAgainstHold,
            Grading.Difference(ratio, 0.2, 0.5),
            false,
            Sentences.TwoSpeeds(Words.ChannelName(Channel.Main), idle, Idle, hold, Hold, unit),
            0.8);
    }

    // Main rises a little with speed as the regulator passes more oil; where it falls, the pump draws air or is starved.
    private static Observed? MainHoldToGoverned(Evidence evidence, PressureUnit unit)
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
            Sentences.TwoSpeeds(Words.ChannelName(Channel.Main), slow, Hold, fast, Governed, unit));
    }

    // The converter takes what the regulator spills. A weak pump spills nothing at idle first, a clogged strainer at speed first;
    // an open relief or drilling takes the same part at either.
    private static Observed? ConverterIdleToHold(Evidence evidence, PressureUnit unit)
    {
        double usual = SheetRatio(evidence, Channel.Converter) ?? UsualIdlePart;
        if (evidence.Steps.Good(Step.IdleNeutral)?.Converter is not { } idle || evidence.Steps.Good(Step.HoldNeutral)?.Converter is not { } hold
            || hold.Value < 5_000 || idle.OfOneSensor.Scaled(1 / usual).RelativeTo(hold.OfOneSensor) is not { } ratio)
        {
            return null;
        }

        return new Observed(
            Observation.ConverterIdleAgainstHold,
            Grading.Difference(ratio, 0.3, 0.7),
            false,
            Sentences.TwoSpeeds(Words.ChannelName(Channel.Converter), idle, Idle, hold, Hold, unit));
    }

    // What a pump gives rises with speed, and the converter gets what is left of it; behind a strainer that is full there is no more.
    private static Observed? ConverterHoldToGoverned(Evidence evidence, PressureUnit unit)
    {
        const double leastExponent = 0.6;
        if (evidence.Steps.Good(Step.Governed) is not { Converter: { } fast, Rpm: { } fastRpm }
            || evidence.Steps.Good(Step.HoldNeutral) is not { Converter: { Value: > 5_000 } slow, Rpm: { } slowRpm } || fastRpm.Value < 1.05 * slowRpm.Value
            || fast.OfOneSensor.Scaled(Math.Pow(slowRpm.Value / fastRpm.Value, leastExponent)).RelativeTo(slow.OfOneSensor) is not { } rise)
        {
            return null;
        }

        var missing = new Measured(Math.Min(0, rise.Value), rise.Budget);
        return new Observed(
            Observation.ConverterGovernedAgainstHold,
            Grading.Difference(missing, 0.05, 0.25),
            false,
            Sentences.TwoSpeeds(Words.ChannelName(Channel.Converter), slow, Hold, fast, Governed, unit),
            1.2);
    }

    // Where the manual prints a pressure at both speeds, its own ratio is the usual one: circuits differ.
    private static double? SheetRatio(Evidence evidence, int channel)
    {
        double? idle = Middle(StepLimits.Of(evidence.Sheet.Idle.For(Gear.Neutral), channel));
        double? hold = Middle(StepLimits.Of(evidence.Sheet.Hold.For(Gear.Neutral), channel));
        return idle > 0 && hold > 0 ? idle / hold : null;
    }

    private static double? Middle(Limit? limit) => limit?.Nominal ?? ((limit?.Min + limit?.Max) / 2);
}
