using System.Collections.Generic;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.TruckSimulator.Boards;

/// <summary>How pickup and transducers are fitted, rightly or wrongly.</summary>
public sealed record InstrumentParameters
{
    /// <summary>What the logger is told: one plug lead of a four-stroke engine.</summary>
    public const ushort DeclaredPulses = 1;
    public const ushort DeclaredRevolutions = 2;

    /// <summary>Pulses that really come in <see cref="DeclaredRevolutions"/> revolutions.</summary>
    public int PulsesInThoseRevolutions { get; init; } = DeclaredPulses;

    /// <summary>Random noise, spikes and jitter beside the usual; 0 for perfect instruments.</summary>
    public double Noise { get; init; } = 1;

    /// <summary>What the tag says in N, F and R; null where the logger has no gear input.</summary>
    public IReadOnlyList<Gear>? TagWiring { get; init; } = [Gear.Neutral, Gear.Forward, Gear.Reverse];

    /// <summary>The tag follows the lever at most this late.</summary>
    public double LatestTagSeconds { get; init; } = 0.4;

    /// <summary>Two channels whose hoses are exchanged; 0 for none.</summary>
    public int ExchangedLine { get; init; }

    public int ExchangedWith { get; init; }

    /// <summary>A channel (see <see cref="Channel"/>) that reads off by a constant; 0 for none.</summary>
    public int ShiftedChannel { get; init; }

    public double ShiftPascal { get; init; }

    /// <summary>Which line the transducer of a channel is screwed to.</summary>
    public int LineOf(int channel) =>
        channel == ExchangedLine && channel > 0 ? ExchangedWith : channel == ExchangedWith && channel > 0 ? ExchangedLine : channel;
}
