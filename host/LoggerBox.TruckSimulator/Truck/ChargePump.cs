using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>Gear pump on the converter hub. SlipGap (m3): what its clearances let back to the suction side.</summary>
public sealed record ChargePumpParameters(double CubicMetresPerRevolution, double SlipGap);

public sealed class ChargePump(ChargePumpParameters parameters)
{
    private const double MechanicalEfficiency = 0.9;

    /// <summary>m3/s, never less than nothing: a stopped pump holds no pressure.</summary>
    public double Flow(double rpm, double pascal, double dynamicViscosity)
    {
        double driven = parameters.CubicMetresPerRevolution * rpm / 60;
        return Math.Max(0, driven - Truck.Flow.ThroughGap(parameters.SlipGap, pascal, dynamicViscosity));
    }

    public double Torque(double pascal) => pascal * parameters.CubicMetresPerRevolution / (2 * Math.PI * MechanicalEfficiency);
}
