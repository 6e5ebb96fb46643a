using System;
using System.Collections.Generic;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>Engine speeds: idle, governed, drop under the work hydraulics' relief, run-up, stall each way, and the difference of the two.</summary>
public static class SpeedObservations
{
    /// <summary>Common practice, no source: a weak engine or a slipping clutch moves stall by less than this, a stator by more.</summary>
    private const double StatorStall = 0.78;

    /// <summary>Two stalls of a sound truck agree better than this (fraction of stall speed).</summary>
    private const double PracticalStallDifference = 0.035;

    public static IEnumerable<Observed?> Of(Evidence evidence, Roles roles)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(roles);
        var engine = evidence.Engine;
        yield return Speed(Observation.IdleSpeed, "Idle", roles.Of(Step.IdleNeutral)?.Rpm, engine.IdleRpm, 0.7, 1.4);
        yield return Speed(Observation.GovernedSpeed, "Governed speed", evidence.Governed, engine.GovernedRpm, 0.85, 1.15);
        yield return Speed(Observation.ReliefDrop, "Drop over relief", evidence.ReliefDrop, WithFloor(engine.ReliefDropRpm), 0.4, 1.6, engine.ReliefDropRpm);
        yield return LimitObservation.Of(
            Observation.RunUpTime, "Run-up", evidence.RunUp, engine.RunUpSeconds, "0.00", "s", 0, 1.6 * (engine.RunUpSeconds?.Max ?? 1));

        var forward = roles.Of(Step.StallForward)?.Rpm;
        var reverse = roles.Of(Step.StallReverse)?.Rpm;
        bool isGuide = StallHeight.IsALittleHighInBoth(evidence, forward, reverse);
        yield return Guide(Stall(Observation.StallForward, Words.Capital(roles.Name(Step.StallForward)), forward, engine.StallForwardRpm, evidence.Governed), isGuide);
        yield return Guide(Stall(Observation.StallReverse, Words.Capital(roles.Name(Step.StallReverse)), reverse, engine.StallReverseRpm, evidence.Governed), isGuide);
    }

    /// <param name="printed">What the sheet says, where the limit that is graded against says more.</param>
    private static Observed? Speed(Observation observation, string name, Measured? reading, Limit? limit, double veryLow, double veryHigh, Limit? printed = null)
    {
        var seen = LimitObservation.Of(observation, name, reading, limit, "0", "rpm", veryLow * (limit?.Min ?? 0), veryHigh * (limit?.Max ?? double.MaxValue), printed: printed);
        bool lowTells = (printed ?? limit)?.Min is not null;
        return seen is { Strongest: Level.Low or Level.VeryLow } && !lowTells ? seen with { Telling = false } : seen;
    }

    // A sheet may limit the drop upwards only. A load that hardly pulls the engine down leans to low then, but accuses nobody.
    private static Limit? WithFloor(Limit? limit) => limit is { Min: null, Max: { } max } ? limit with { Min = 0.3 * max } : limit;

    private static Observed? Stall(Observation observation, string name, Measured? reading, Limit? limit, Measured? governed)
    {
        if (limit is null)
        {
            return null;
        }

        double nominal = limit.Nominal ?? (((limit.Min ?? limit.Max) + (limit.Max ?? limit.Min)) / 2) ?? 0;
        double top = limit.Max ?? (1.1 * nominal);
        double nearGoverned = governed is { } g && g.Value > top ? top + (0.55 * (g.Value - top)) : 1.25 * top;
        return LimitObservation.Of(observation, name, reading, limit, "0", "rpm", StatorStall * nominal, nearGoverned);
    }

    // Leans, and accuses nobody alone.
    private static Observed? Guide(Observed? stall, bool isGuide) => isGuide && stall is not null ? stall with { Telling = false } : stall;

    public static Observed? StallDifference(Roles roles)
    {
        ArgumentNullException.ThrowIfNull(roles);
        var forward = roles.Of(Step.StallForward)?.Rpm;
        var reverse = roles.Of(Step.StallReverse)?.Rpm;
        if (forward is null || reverse is null || forward.Less(reverse) is not { } difference || difference.Scaled(1 / reverse.Value) is not { } relative)
        {
            return null;
        }

        bool telling = Math.Abs(relative.Value) > PracticalStallDifference + relative.Expanded;
        return new Observed(
            Observation.StallForwardAgainstReverse,
            Grading.Difference(relative, PracticalStallDifference, 0.2),
            telling,
            Sentences.TwoStalls(roles.Name(Step.StallForward), forward.Value, roles.Name(Step.StallReverse), reverse.Value));
    }
}
