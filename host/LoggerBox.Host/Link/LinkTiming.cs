using System;

namespace LoggerBox.Host.Link;

/// <summary>How long the host waits, and how often it asks again.</summary>
/// <param name="Answer">For the answer to one request, whatever else comes in meanwhile.</param>
/// <param name="Attempts">Requests before the host gives up.</param>
/// <param name="Silence">For new bytes while a range is on its way.</param>
/// <param name="Check">For the logger to read a whole session on its card and compare it.</param>
public sealed record LinkTiming(TimeSpan Answer, int Attempts, TimeSpan Silence, TimeSpan Check)
{
    public static readonly LinkTiming Default = new(TimeSpan.FromSeconds(1), 4, TimeSpan.FromSeconds(1.5), TimeSpan.FromSeconds(60));
}
