using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>HeatCapacity J/K of oil and the metal that follows it; CoolingPerSecond: share of the excess over CoolerCelsius lost a second.</summary>
public sealed record OilTemperatureParameters(double StartCelsius, double HeatCapacity, double CoolerCelsius, double CoolingPerSecond);

public sealed class OilTemperature(OilTemperatureParameters parameters)
{
    // Friction of pump and gears, part of which reaches the oil even without load, W for each rad/s.
    private const double ChurningPerRadianPerSecond = 12;

    public double Celsius { get; private set; } = parameters.StartCelsius;

    public void Step(double loss, double engineSpeed, double seconds)
    {
        double heat = (loss + ChurningPerRadianPerSecond * engineSpeed) / parameters.HeatCapacity;
        double flow = Math.Min(1, engineSpeed / 100);
        double cooling = (Celsius - parameters.CoolerCelsius) * parameters.CoolingPerSecond * flow;
        Celsius += (heat - cooling) * seconds;
    }
}
