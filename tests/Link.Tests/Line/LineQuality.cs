using System;

namespace LoggerBox.Link.Tests.Line;

/// <summary>What a line does to bytes, each direction by itself. Rates are chances for one byte, in the order in which they are tried.</summary>
/// <param name="Baud">8N1: ten bits a byte.</param>
/// <param name="Latency">One way, added to the time on the wire: a USB bridge's timer, a radio.</param>
/// <param name="BitErrorRate">For each of the ten bits; a hit flips one data bit.</param>
/// <param name="DropRate">The byte is gone.</param>
/// <param name="DuplicateRate">The byte comes twice.</param>
/// <param name="BurstRate">From here on, for the time of <paramref name="BurstLength"/> bytes, noise takes the place of what is sent.</param>
/// <param name="TransmitBuffer">Bytes that a sender can hand over before they are on the wire.</param>
public sealed record LineQuality(
    int Baud,
    TimeSpan Latency,
    double BitErrorRate = 0,
    double DropRate = 0,
    double DuplicateRate = 0,
    double BurstRate = 0,
    int BurstLength = 200,
    int TransmitBuffer = 256)
{
    public static readonly LineQuality Usb115200 = new(115_200, TimeSpan.FromMilliseconds(8));
    public static readonly LineQuality Usb921600 = new(921_600, TimeSpan.FromMilliseconds(1));

    public double BytesPerSecond => Baud / 10.0;

    /// <summary>Rounded up: the model is never faster than the line.</summary>
    public long NanosecondsPerByte => (10_000_000_000 + Baud - 1) / Baud;

    public long LatencyNanoseconds => Latency.Ticks * TimeSpan.NanosecondsPerTick;
}
