using System;
using LoggerBox.Capture.Board;

namespace LoggerBox.Board.Tests.Bench;

/// <summary>
/// A 16-bit counter with a 64-bit extension in software, as the platform makes one: the hardware falls to 0 at 32767, an interrupt adds
/// 32767 a moment later, and a reading in between sees only one of the two.
/// </summary>
public sealed class SimulatedPulses : IPulseCounter
{
    private const int Overflow = 32767;

    private double pulses;

    public double Rpm { get; set; }

    public double PulsesPerRevolution { get; set; } = 1;

    /// <summary>How many of the next readings race the interrupt; the sign says which half they miss.</summary>
    public int Races { get; set; }

    /// <summary>Microseconds since boot.</summary>
    public long Now { get; private set; }

    public void Advance(long microseconds)
    {
        Now += microseconds;
        pulses += Rpm / 60e6 * PulsesPerRevolution * microseconds;
    }

    /// <summary>So many pulses came before now.</summary>
    public void CountFrom(long count) => pulses = count;

    /// <summary>The counter's part of the chip began anew.</summary>
    public void Restart() => pulses = 0;

    public void Read(out long count, out long microseconds)
    {
        count = (long)pulses + (Math.Sign(Races) * Overflow);
        Races -= Math.Sign(Races);
        microseconds = Now;
    }
}
