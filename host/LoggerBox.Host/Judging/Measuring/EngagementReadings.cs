using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>
/// Clutch engagements at idle: the longest that nothing disturbed is the one judged, of the newest session that has one. Where each was disturbed before the pressure stood,
/// one that had taken longer than the limit by then is judged all the same: it can only have taken longer still.
/// </summary>
public static class EngagementReadings
{
    /// <summary>Above this speed (rpm) the pump fills a clutch faster than any idle limit means.</summary>
    public const double IdleCeilingRpm = 1100;

    /// <summary>A hold that an engagement leads to begins at most this long after it.</summary>
    private const long SettlingMicroseconds = 4_000_000;

    /// <summary>One that was cut off, where no other of this gear was whole, and longer than this when it was.</summary>
    public static EngagementRecord? CutOff(IReadOnlyList<RecordedSession> sessions, Gear gear, double? beyondSeconds) =>
        Longest(sessions, gear, disturbed: false) is null
        && Longest(sessions, gear, disturbed: true) is { } record && record.TotalMilliseconds / 1000.0 > beyondSeconds
            ? record
            : null;

    /// <summary>Engine speed at which this gear was put in last, where that was above idle.</summary>
    public static double? AboveIdle(IReadOnlyList<RecordedSession> sessions, Gear gear) =>
        sessions.SelectMany(session => session.Engagements.Where(record => GearOf(session, record) == gear && !record.NeverFilled))
            .Select(record => record.SpeedTenths / 10.0)
            .Where(rpm => rpm >= IdleCeilingRpm)
            .Select(rpm => (double?)rpm)
            .LastOrDefault();

    /// <summary>The recording tells of no engagement in which gear it was.</summary>
    public static bool GearsUnknown(IReadOnlyList<RecordedSession> sessions) =>
        sessions.Any(session => session.Engagements.Count > 0)
        && sessions.All(session => session.Engagements.All(record => GearOf(session, record) == Gear.Unknown));

    public static bool NeverFilled(IReadOnlyList<RecordedSession> sessions, Gear gear)
    {
        var newest = sessions.LastOrDefault(session => Made(session, gear).Any());
        return newest is not null && Made(newest, gear).All(record => record.NeverFilled);
    }

    /// <summary>Half of the time between two samples at each end, and as much again for the shape of the corner.</summary>
    /// <param name="mostSeconds">The limit, where there is one.</param>
    public static Measured? Seconds(IReadOnlyList<RecordedSession> sessions, Gear gear, double? mostSeconds = null) =>
        (Longest(sessions, gear, disturbed: false) ?? CutOff(sessions, gear, mostSeconds)) is { } record ? Timed(sessions, record) : null;

    /// <summary>Where no engagement tells its gear: the longest first. At most two count, because there are two clutches.</summary>
    /// <param name="mostSeconds">The limit, where there is one.</param>
    public static (Measured? Longest, Measured? Next) LongestTwo(IReadOnlyList<RecordedSession> sessions, double? mostSeconds = null)
    {
        var two = Filled(sessions, Gear.Unknown, disturbed: false)
            .OrderByDescending(record => record.TotalMilliseconds)
            .Take(2)
            .Select(record => Timed(sessions, record))
            .ToList();
        Measured? cut = CutOff(sessions, Gear.Unknown, mostSeconds) is { } record ? Timed(sessions, record) : null;
        return (two.Count > 0 ? two[0] : cut, two.Count > 1 ? two[1] : null);
    }

    /// <summary>The engagement that is looked at: the judged one, else one that was disturbed or never filled. Null: there is none in this gear.</summary>
    public static EngagementRecord? Shown(IReadOnlyList<RecordedSession> sessions, Gear gear) =>
        Longest(sessions, gear, disturbed: false)
        ?? Longest(sessions, gear, disturbed: true)
        ?? sessions.SelectMany(session => session.Engagements.Where(record => GearOf(session, record) == gear)).FirstOrDefault();

    private static EngagementRecord? Longest(IReadOnlyList<RecordedSession> sessions, Gear gear, bool disturbed) =>
        Filled(sessions, gear, disturbed).MaxBy(record => record.TotalMilliseconds);

    private static Measured Timed(IReadOnlyList<RecordedSession> sessions, EngagementRecord record)
    {
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

    /// <summary>What was measured last counts: a clutch that took long in an earlier engine run may have been put right since.</summary>
    private static List<EngagementRecord> Filled(IReadOnlyList<RecordedSession> sessions, Gear gear, bool disturbed) =>
        sessions.Reverse().Select(session => Filled(session, gear, disturbed).ToList()).FirstOrDefault(filled => filled.Count > 0) ?? [];

    // Of an engine that ran.
    private static IEnumerable<EngagementRecord> Made(RecordedSession session, Gear gear) =>
        session.Engagements.Where(record => GearOf(session, record) == gear && !MeasuredHold.IsCranking(record.SpeedTenths / 10.0));

    private static IEnumerable<EngagementRecord> Filled(RecordedSession session, Gear gear, bool disturbed) =>
        Made(session, gear)
            .Where(record => record.Disturbed == disturbed && record.SpeedTenths / 10.0 < IdleCeilingRpm)
            .Where(record => !record.NeverFilled && record.TotalMilliseconds > 0);
}
