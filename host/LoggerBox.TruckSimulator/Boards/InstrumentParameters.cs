using LoggerBox.Protocol.Records;

namespace LoggerBox.TruckSimulator.Boards;

/// <summary>How pickup and transducers are fitted, rightly or wrongly.</summary>
public sealed record InstrumentParameters
{
    /// <summary>What the logger is told: one plug lead of a four-stroke engine.</summary>
    public const ushort DeclaredPulses = 1;
    public const ushort DeclaredRevolutions = 2;

    /// <summary>Pulses that really come in <see cref="DeclaredRevolutions"/> revolutions.</summary>
    public int PulsesInThoseRevolutions { get; init; } = DeclaredPulses;

    /// <summary>A channel (see <see cref="Channel"/>) that reads off by a constant; 0 for none.</summary>
    public int ShiftedChannel { get; init; }

    public double ShiftPascal { get; init; }
}
