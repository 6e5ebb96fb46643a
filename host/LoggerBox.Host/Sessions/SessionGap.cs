using System;

namespace LoggerBox.Host.Sessions;

/// <summary>
/// A place in a session where records were damaged or are missing, between the times that the records beside it show. Times are microseconds
/// since the logger's boot.
/// </summary>
/// <param name="FromMicroseconds">Where the last samples before it end; null where none are left.</param>
/// <param name="ToMicroseconds">Where the first samples after it begin; null at the open end of a session that was cut.</param>
/// <param name="Records">Records that are missing by their sequence, or whose content cannot be; 0 at an open end, which nothing counts.</param>
/// <param name="Bytes">Bytes that belong to no whole record.</param>
public sealed record SessionGap(long? FromMicroseconds, long? ToMicroseconds, long Records, long Bytes)
{
    /// <summary>How long no samples were kept: zero where none are missing, null where a side is unknown or clocks contradict each other.</summary>
    public TimeSpan? Duration =>
        FromMicroseconds is long from && ToMicroseconds is long to && to >= from && to - from is >= 0 and <= LongestMicroseconds
            ? TimeSpan.FromMicroseconds(to - from)
            : null;

    // A made-up time can be any number, and two of them can be further apart than a number or a span of time counts.
    private const long LongestMicroseconds = long.MaxValue / TimeSpan.TicksPerMicrosecond;

    /// <summary>Whether samples of this stretch are missing, or may be.</summary>
    public bool Cuts(long startMicroseconds, long endMicroseconds) =>
        Duration != TimeSpan.Zero
        && (FromMicroseconds is not long from || from < endMicroseconds)
        && (ToMicroseconds is not long to || to > startMicroseconds);
}
