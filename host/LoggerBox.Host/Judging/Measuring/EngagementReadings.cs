using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>Clutch engagements at idle: the longest that nothing disturbed is the one judged.</summary>
public static class EngagementReadings
{
    /// <summary>Above this speed (rpm) the pump fills a clutch faster than any idle limit means.</summary>
    private const double IdleCeilingRpm = 1100;

    /// <summary>A hold that an engagement leads to begins at most this long after it.</summary>
    private const long SettlingMicroseconds = 4_000_000;

    public static EngagementRecord? Longest(IReadOnlyList<RecordedSession> sessions, Gear gear) =>
        AtIdle(sessions, gear)
            .Where(record => !record.NeverFilled && record.TotalMilliseconds > 0)
            .MaxBy(record => record.TotalMilliseconds);

    public static bool NeverFilled(IReadOnlyList<RecordedSession> sessions, Gear gear)
    {
        var records = sessions.SelectMany(session => session.Engagements.Where(record => GearOf(session, record) == gear)).ToList();
        return records.Count > 0 && records.All(record => record.NeverFilled);
    }

    /// <summary>Half of the time between two samples at each end, and as much again for the shape of the corner.</summary>
    public static Measured? Seconds(IReadOnlyList<RecordedSession> sessions, Gear gear)
    {
        if (Longest(sessions, gear) is not { } record)
        {
            return null;
        }

        double interval = sessions.Where(s => s.Engagements.Contains(record)).Select(SampleSeconds).First();
        var budget = new UncertaintyBudget().AddRectangular(interval).AddRectangular(interval).AddRectangular(0.02);
        return new Measured(record.TotalMilliseconds / 1000.0, budget);
    }

    public static double SampleSeconds(RecordedSession session)
    {
        if (session.Header.SampleIntervalMicroseconds > 0)
        {
            return session.Header.SampleIntervalMicroseconds / 1e6;
        }

        var samples = session.Samples;
        double missing = session.Gaps.Sum(gap => gap.Duration?.TotalMicroseconds ?? 0);
        return samples.Count > 1 ? Math.Max(samples[^1].Microseconds - samples[0].Microseconds - missing, 0) / 1e6 / (samples.Count - 1) : 0.02;
    }

    /// <summary>Without a selector input the step that the operator marked for the hold that follows says the direction.</summary>
    private static Gear GearOf(RecordedSession session, EngagementRecord record)
    {
        if (record.Gear != Gear.Unknown)
        {
            return record.Gear;
        }

        long latest = record.StartMicroseconds + (record.TotalMilliseconds * 1000L) + SettlingMicroseconds;
        var next = session.Holds.FirstOrDefault(hold => hold.Marked && hold.StartMicroseconds >= record.StartMicroseconds && hold.StartMicroseconds <= latest);
        return next?.Step switch
        {
            Step.IdleForward or Step.HoldForward or Step.StallForward => Gear.Forward,
            Step.IdleReverse or Step.HoldReverse or Step.StallReverse => Gear.Reverse,
            _ => Gear.Unknown,
        };
    }

    private static IEnumerable<EngagementRecord> AtIdle(IReadOnlyList<RecordedSession> sessions, Gear gear) =>
        sessions.SelectMany(session => session.Engagements.Where(record => GearOf(session, record) == gear))
            .Where(record => !record.Disturbed && record.SpeedTenths / 10.0 < IdleCeilingRpm);
}
