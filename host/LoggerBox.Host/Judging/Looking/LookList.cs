using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Looking;

/// <summary>One engagement or stall of a recording in normal work.</summary>
/// <param name="Kind">"engagement" (total time, s) or "stall" (speed, rpm).</param>
/// <param name="Value">Null: the clutch never filled.</param>
/// <param name="Usual">Median of the same kind and gear; null where there are fewer than five.</param>
/// <param name="Oddness">Distance from it in robust standard deviations (1.4826 times the median distance); infinite for a clutch that never filled.</param>
public sealed record Seen(string Kind, Gear Gear, double StartSeconds, double? Value, double? Usual, double? Oddness)
{
    /// <summary>Beyond 3.5 hardly any of a thousand usual ones lies.</summary>
    public bool IsOdd => Oddness > 3.5;
}

/// <summary>
/// The fault that comes and goes: every engagement and stall of a day's work, the odd ones first. The truck is held against itself, no limit is needed.
/// Works on the records that the logger made, so its memory does not grow with the samples.
/// </summary>
public static class LookList
{
    private const int FewestAlike = 5;

    // A clutch that fills in equal times to the sample would make everything else odd: five percent of the usual is never odd.
    private const double LeastShare = 0.05 / 3.5;

    public static IReadOnlyList<Seen> Of(IReadOnlyList<RecordedSession> sessions, PlanRecord plan)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        IEnumerable<Seen> all = sessions.SelectMany(Engagements).Concat(sessions.SelectMany(session => Stalls(session, plan)));
        return
        [
            .. all.GroupBy(one => (one.Kind, one.Gear)).SelectMany(alike => Compared([.. alike]))
                .OrderByDescending(one => one.IsOdd ? one.Oddness : 0).ThenBy(one => one.StartSeconds),
        ];
    }

    private static IEnumerable<Seen> Engagements(RecordedSession session) => session.Engagements
        .Where(record => !record.Disturbed)
        .Select(record => new Seen(
            "engagement",
            record.Gear,
            (record.StartMicroseconds - session.Header.StartMicroseconds) / 1e6,
            record.NeverFilled ? null : record.TotalMilliseconds / 1000.0,
            null,
            null));

    private static IEnumerable<Seen> Stalls(RecordedSession session, PlanRecord plan) => HoldMeasuring.Measure(session, plan)
        .Where(hold => hold.Step is Step.StallForward or Step.StallReverse or Step.StallInGear && hold.Rpm is not null)
        .Select(hold => new Seen("stall", hold.Gear, hold.StartSeconds, hold.Rpm!.Value, null, null));

    private static IEnumerable<Seen> Compared(Seen[] alike)
    {
        double[] values = [.. alike.Where(one => one.Value is not null).Select(one => one.Value!.Value).Order()];
        if (values.Length < FewestAlike)
        {
            return alike.Select(one => one.Value is null ? one with { Oddness = double.PositiveInfinity } : one);
        }

        double usual = Median(values);
        double deviation = Math.Max(1.4826 * Median([.. values.Select(value => Math.Abs(value - usual)).Order()]), LeastShare * usual);
        return alike.Select(one => one with
        {
            Usual = usual,
            Oddness = one.Value is double value ? Math.Abs(value - usual) / deviation : double.PositiveInfinity,
        });
    }

    private static double Median(double[] inOrder) => (inOrder[(inOrder.Length - 1) / 2] + inOrder[inOrder.Length / 2]) / 2;
}
