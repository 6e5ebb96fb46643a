using System;
using LoggerBox.Protocol.Records;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Boards;

public enum LoopFault
{
    None,

    /// <summary>Wire off: no current.</summary>
    Open,

    /// <summary>Wire against supply: the input clips.</summary>
    Short,
}

/// <summary>
/// Hose, transducer 4-20 mA, 100 ohm shunt, RC low-pass and a 16-bit converter at +-4.096 V: 4 mA is 3200 counts, 20 mA 16000.
/// </summary>
public sealed class CurrentLoop
{
    public const int ZeroCounts = 3200;
    public const int SpanCounts = 12800;
    private const int Clipped = 32767;
    private const double LowPassHertz = 35;
    private const double NoiseCounts = 5;
    private const double SpikeShare = 0.0015;
    private readonly double _fullScale;
    private readonly double _shift;
    private readonly double _noise;
    private readonly double _offsetCounts;
    private readonly double _gain;
    private readonly SeededChance _chance;
    private double _filtered;

    /// <param name="noise">Beside the usual; 0 for a perfect transducer.</param>
    public CurrentLoop(double fullScalePascal, double shiftPascal, double noise, SeededChance chance)
    {
        ArgumentNullException.ThrowIfNull(chance);
        _fullScale = fullScalePascal;
        _shift = shiftPascal;
        _noise = noise;
        _chance = chance;
        _offsetCounts = chance.Normal() * 0.0008 * SpanCounts * Math.Min(1, noise);
        _gain = 1 + chance.Normal() * 0.001 * Math.Min(1, noise);
    }

    public LoopFault Fault { get; set; }

    public ChannelCalibration Calibration() => new()
    {
        Kind = ChannelKind.CurrentLoop,
        ZeroCounts = ZeroCounts,
        SpanCounts = SpanCounts,
        SpanPascal = (int)Math.Round(_fullScale),
        AccuracyPascal = (int)Math.Round(_fullScale * 0.0025),
    };

    public void Follow(double pascal, double seconds) =>
        _filtered += (pascal - _filtered) * Math.Min(1, 2 * Math.PI * LowPassHertz * seconds);

    /// <param name="ripple">The pump's ripple at this moment, -1 to 1, and its frequency in hertz.</param>
    /// <param name="rippleHertz">The RC low-pass takes most of it away.</param>
    /// <param name="sparking">The ignition is on and the engine turns.</param>
    public int ReadCounts(double ripple, double rippleHertz, bool sparking)
    {
        if (Fault == LoopFault.Open)
        {
            return (int)Math.Round(_chance.Normal() * 2);
        }

        if (Fault == LoopFault.Short)
        {
            return Clipped;
        }

        double passed = 1 / Math.Sqrt(1 + Math.Pow(rippleHertz / LowPassHertz, 2));
        double pascal = _filtered * (1 + 0.012 * _noise * ripple * passed) + _shift;
        double counts = ZeroCounts + _offsetCounts + _gain * pascal / _fullScale * SpanCounts;
        counts += _chance.Normal() * NoiseCounts * _noise;
        if (sparking && _chance.Happens(SpikeShare * _noise))
        {
            double size = _chance.Between(0.05, 0.5) * SpanCounts;
            counts += _chance.Happens(0.5) ? size : -size;
        }

        return (int)Math.Clamp(Math.Round(counts), -Clipped, Clipped);
    }
}
