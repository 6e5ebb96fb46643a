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
/// <param name="Usual">Median of the same kind and gear; null where there are fewer than <see cref="LookList.FewestAlike"/>.</param>
/// <param name="Oddness">Distance from it in robust standard deviations (1.4826 times the median distance); infinite for a clutch that never filled.</param>
public sealed record Seen(string Kind, Gear Gear, double StartSeconds, double? Value, double? Usual, double? Oddness)
{
    /// <summary>The lever was moved above idle, where the pump fills a clutch faster.</summary>
    public bool AboveIdle { get; init; }

    /// <summary>What the recording's own rate leaves open, in the unit of the value.</summary>
    public double Resolution { get; init; }

    public bool IsOdd => Oddness > LookList.OddBeyond;
}

/// <summary>
/// The fault that comes and goes: every engagement and stall of a day's work, the odd ones first. The truck is held against itself, no limit is needed.
/// Works on the records that the logger made, so its memory does not grow with the samples.
/// </summary>
public static class LookList
{
    public const int FewestAlike = 5;

    /// <summary>At the corner where a pressure arrives a reading may be a sample early or late, and so may the one it is held against.</summary>
    private const double SamplesApart = 2;

    /// <summary>No pedal on the floor comes up more slowly (common practice, no source).</summary>
    private const int LongestWayMilliseconds = 3000;

    /// <summary>Beyond this hardly any of a thousand usual ones lies.</summary>
    public const double OddBeyond = 3.5;

    // A clutch that fills in equal times to the sample would make everything else odd: five percent of the usual is never odd.
    private const double LeastShare = 0.05 / OddBeyond;

    public static IReadOnlyList<Seen> Of(IReadOnlyList<RecordedSession> sessions, PlanRecord plan)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        IEnumerable<Seen> all = sessions.SelectMany(Engagements).Concat(sessions.SelectMany(session => Stalls(session, plan)));
        return
        [
            .. all.GroupBy(one => (one.Kind, one.Gear, one.AboveIdle)).SelectMany(alike => Compared([.. alike]))
                .OrderByDescending(one => one.IsOdd ? one.Oddness : 0).ThenBy(one => one.StartSeconds),
        ];
    }

    private static IEnumerable<Seen> Engagements(RecordedSession session) => session.Engagements
        .Where(record => !record.Disturbed)
        .Select(record => new Seen(
            "engagement",
            record.Gear,
            session.SecondsAt(record.StartMicroseconds),
            record.NeverFilled ? null : record.TotalMilliseconds / 1000.0,
            null,
            null)
        {
            AboveIdle = record.SpeedTenths / 10.0 >= EngagementReadings.IdleCeilingRpm,
            Resolution = SamplesApart * EngagementReadings.SampleSeconds(session),
        });

    // Steady driving stands as still: it lasts longer than anybody stalls, or the speed crept up to it.
    private static IEnumerable<Seen> Stalls(RecordedSession session, PlanRecord plan) => HoldMeasuring.Measure(session, plan)
        .Where(hold => hold.Step is Step.StallForward or Step.StallReverse or Step.StallInGear && hold.Rpm is not null)
        .Where(hold => hold.Record.ApproachMilliseconds is > 0 and <= LongestWayMilliseconds && hold.Record.DurationMilliseconds <= plan.StallStopMilliseconds)
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
        deviation = Math.Max(deviation, alike.Max(one => one.Resolution) / OddBeyond);
        return alike.Select(one => one with
        {
            Usual = usual,
            Oddness = one.Value is double value ? Math.Abs(value - usual) / deviation : double.PositiveInfinity,
        });
    }

    private static double Median(double[] inOrder) => (inOrder[(inOrder.Length - 1) / 2] + inOrder[inOrder.Length / 2]) / 2;
}
