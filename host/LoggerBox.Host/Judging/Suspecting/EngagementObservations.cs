using System;
using System.Collections.Generic;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>How long each clutch takes to fill, against the limit and against the other.</summary>
public static class EngagementObservations
{
    /// <summary>
    /// A sound pair differs by less than this part of the shorter time (no published source). It supports what pressures say and accuses
    /// nobody alone: a late tag or air in the gauge hose makes as much.
    /// </summary>
    private const double Practical = 0.4;

    public static IEnumerable<Observed?> Of(Evidence evidence, Roles roles)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(roles);
        var limit = evidence.Sheet.EngagementSeconds;
        bool gearsUnknown = EngagementReadings.GearsUnknown(evidence.Sessions);
        var (forward, reverse) = gearsUnknown
            ? EngagementReadings.LongestTwo(evidence.Sessions, limit?.Max)
            : (EngagementReadings.Seconds(evidence.Sessions, Gear.Forward, limit?.Max), EngagementReadings.Seconds(evidence.Sessions, Gear.Reverse, limit?.Max));
        if (gearsUnknown && IsEmpty(roles))
        {
            // What engaged was the other clutch, each time.
            (forward, reverse) = (null, forward);
        }

        string name = gearsUnknown ? "Engagement" : "Engagement of F";
        string other = gearsUnknown ? "Next to longest engagement" : "Engagement of R";
        double veryLow = 0.5 * (limit?.Min ?? 0);
        double veryHigh = 1.8 * (limit?.Max ?? 100);
        yield return Never(evidence, Observation.EngageForward, Gear.Forward)
            ?? LimitObservation.Of(Observation.EngageForward, name, forward, limit, "0.00", "s", veryLow, veryHigh, 0.8);
        yield return Never(evidence, Observation.EngageReverse, Gear.Reverse)
            ?? LimitObservation.Of(Observation.EngageReverse, other, reverse, limit, "0.00", "s", veryLow, veryHigh, 0.8);
    }

    public static Observed? Difference(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        double? most = evidence.Sheet.EngagementSeconds?.Max;
        if (EngagementReadings.GearsUnknown(evidence.Sessions)
            || EngagementReadings.Seconds(evidence.Sessions, Gear.Forward, most) is not { } forward || EngagementReadings.Seconds(evidence.Sessions, Gear.Reverse, most) is not { } reverse)
        {
            return null;
        }

        double shorter = Math.Max(0.1, Math.Min(forward.Value, reverse.Value));
        var relative = forward.Less(reverse).Scaled(1 / shorter);
        return new Observed(
            Observation.EngageForwardAgainstReverse,
            Grading.Difference(relative, Practical, 1.5),
            false,
            Sentences.TwoEngagements(forward.Value, reverse.Value),
            0.8);
    }

    private static bool IsEmpty(Roles roles) =>
        (roles.Of(Step.HoldForward) ?? roles.Of(Step.IdleForward)) is { } hold && HoldGates.ClutchIsEmpty(hold);

    private static Observed? Never(Evidence evidence, Observation observation, Gear gear) =>
        evidence.NeverFilled(gear)
            ? new Observed(observation, [0, 0, 0, 0, 1], true, Sentences.NeverFilled(gear))
            : null;
}
