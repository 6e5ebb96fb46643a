using LoggerBox.Host.Units;

namespace LoggerBox.Host.DataSheets;

/// <summary>What a figure of a data sheet can be without being a slip of the keyboard. The bounds themselves are allowed.</summary>
/// <param name="Words">For a sentence: "rpm", "kPa", "seconds".</param>
internal sealed record QuantityRange(string Words, double Lowest, double Highest)
{
    /// <summary>No engine of a lift truck comes near the upper end.</summary>
    public static readonly QuantityRange Rpm = new("rpm", 0, 10000);

    public static readonly QuantityRange Seconds = new("seconds", 0, 3600);

    public static readonly QuantityRange Celsius = new("°C", -50, 200);

    /// <summary>Half a pulse is one plug lead of a four-stroke; a ring gear has well under 1000 teeth.</summary>
    public static readonly QuantityRange PulsesPerRevolution = new("pulses per revolution", 0.01, 1000);

    /// <summary>From the Dead Sea's shore to above the highest road.</summary>
    public static readonly QuantityRange AltitudeMetres = new("metres", -450, 6000);

    /// <summary>Gauge pressure up to 40 MPa, which is far above any transmission and most work hydraulics.</summary>
    public static QuantityRange Pressure(PressureUnit unit) => new(unit.Code(), 0, 40e6 / unit.InPascal());

    public static QuantityRange PressureDifference(PressureUnit unit) => new(unit.Code(), -40e6 / unit.InPascal(), 40e6 / unit.InPascal());

    public bool Contains(double value) => value >= Lowest && value <= Highest;
}
