using System;

namespace LoggerBox.Host.Link;

/// <summary>How long the host waits before it gives up. When it asks again within that time, it finds out by itself.</summary>
/// <param name="Answer">For the answer to one request, whatever else comes in meanwhile.</param>
/// <param name="Silence">For new bytes of a session that was asked for.</param>
/// <param name="Check">For the logger to read a whole session on its card and compare it.</param>
public sealed record LinkTiming(TimeSpan Answer, TimeSpan Silence, TimeSpan Check)
{
    public static readonly LinkTiming Default = new(TimeSpan.FromSeconds(4), TimeSpan.FromSeconds(6), TimeSpan.FromSeconds(240));
}
