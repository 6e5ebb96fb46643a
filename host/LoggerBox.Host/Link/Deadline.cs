using System;
using System.Diagnostics;

namespace LoggerBox.Host.Link;

/// <summary>The end of a wait, by a clock that nobody sets.</summary>
internal readonly struct Deadline
{
    private readonly long start = Stopwatch.GetTimestamp();
    private readonly TimeSpan limit;

    public Deadline(TimeSpan limit) => this.limit = limit;

    public TimeSpan Left => limit - Stopwatch.GetElapsedTime(start) is { Ticks: > 0 } left ? left : TimeSpan.Zero;

    public bool IsOver => Left == TimeSpan.Zero;
}
