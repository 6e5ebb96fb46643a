using System;

namespace LoggerBox.Host.Link;

/// <summary>The end of a wait, by a clock that nobody sets.</summary>
internal readonly struct Deadline
{
    private readonly TimeProvider clock;
    private readonly long start;
    private readonly TimeSpan limit;

    public Deadline(TimeProvider clock, TimeSpan limit)
    {
        this.clock = clock;
        this.limit = limit;
        start = clock.GetTimestamp();
    }

    public TimeSpan Spent => clock.GetElapsedTime(start);

    public TimeSpan Left => limit - Spent is { Ticks: > 0 } left ? left : TimeSpan.Zero;

    public bool IsOver => Left == TimeSpan.Zero;
}
