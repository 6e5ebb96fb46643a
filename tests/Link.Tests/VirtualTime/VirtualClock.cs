using System;

namespace LoggerBox.Link.Tests.VirtualTime;

/// <summary>Time that passes only when the line is waited for: hours of a bad line take seconds, and a seed gives the same run again.</summary>
internal sealed class VirtualClock : TimeProvider
{
    private const long NanosecondsPerSecond = 1_000_000_000;

    public long Now { get; set; }

    public TimeSpan Elapsed => TimeSpan.FromTicks(Now / TimeSpan.NanosecondsPerTick);

    public override long TimestampFrequency => NanosecondsPerSecond;

    public override long GetTimestamp() => Now;
}
