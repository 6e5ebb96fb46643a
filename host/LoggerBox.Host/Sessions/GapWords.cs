using System;
using System.Globalization;

namespace LoggerBox.Host.Sessions;

/// <summary>A gap as a technician reads it, in seconds from the session's start.</summary>
public static class GapWords
{
    public static string Of(SessionGap gap, RecordedSession session)
    {
        ArgumentNullException.ThrowIfNull(gap);
        ArgumentNullException.ThrowIfNull(session);
        string what = gap.Records > 0 ? Count(gap.Records, "record") : Count(gap.Bytes, "byte");
        string from = Second(gap.FromMicroseconds, session);
        string to = Second(gap.ToMicroseconds, session);
        return (gap.FromMicroseconds, gap.ToMicroseconds) switch
        {
            (null, null) => $"Of {what} that cannot be read nobody knows the time.",
            (null, _) => $"Before {to} {what} cannot be read: how much time is missing is unknown.",
            (_, null) => $"After {from} {what} cannot be read: the recording breaks off there, and how much time is missing is unknown.",
            _ when gap.Duration is not TimeSpan => $"Between {from} and {to} {what} cannot be read, and the times contradict each other.",
            _ when gap.Duration == TimeSpan.Zero => $"At {from} {what} cannot be read: no samples are missing, but a hold or an event may be.",
            _ => $"From {from} to {to}, {Lasting(gap)}, {what} cannot be read: nothing is known of that time, and a hold or an event may be missing.",
        };
    }

    /// <summary>The length of a gap of known length.</summary>
    public static string Lasting(SessionGap gap)
    {
        ArgumentNullException.ThrowIfNull(gap);
        return gap.Duration is TimeSpan known ? Seconds(known.TotalSeconds) : "an unknown time";
    }

    private static string Second(long? microseconds, RecordedSession session) =>
        microseconds is long known ? Seconds(session.SecondsAt(known)) : "";

    private static string Seconds(double seconds) => seconds.ToString("0.00", CultureInfo.InvariantCulture) + " s";

    private static string Count(long count, string thing) => count == 1 ? $"1 {thing}" : $"{count} {thing}s";
}
