using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>Plates that slip get hot and hold less: why a worn clutch's stall speed creeps up.</summary>
public sealed class PlateHeat
{
    private const double HeatCapacity = 3500;
    private const double CoolingSeconds = 12;
    private const double FadePerKelvin = 0.0025;
    private const double LeastFriction = 0.6;
    private double _excess;

    /// <summary>Share of the cold plates' capacity.</summary>
    public double Friction => Math.Max(LeastFriction, 1 - FadePerKelvin * _excess);

    public void Step(double loss, double seconds) =>
        _excess = Math.Max(0, _excess + (loss / HeatCapacity - _excess / CoolingSeconds) * seconds);
}
