using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>Gear pump on the converter hub. SI units.</summary>
/// <param name="SlipGap">What its clearances let back to the suction side, m3.</param>
/// <param name="AirShare">Air in the oil at the suction side: of what it displaces, this part comes out as nothing.</param>
/// <param name="SuctionLimit">More than this, m3/s, does not get through the suction strainer.</param>
public sealed record ChargePumpParameters(
    double CubicMetresPerRevolution, double SlipGap, double AirShare = 0, double SuctionLimit = double.PositiveInfinity)
{
    /// <summary>Sucks evenly: no air, no strainer in the way.</summary>
    public bool IsWellFed => AirShare == 0 && double.IsPositiveInfinity(SuctionLimit);
}

public sealed class ChargePump(ChargePumpParameters parameters)
{
    private const double MechanicalEfficiency = 0.9;

    // Thick oil passes a clogged strainer badly: its limit is for oil of this dynamic viscosity, Pa s.
    private const double StrainerReference = 0.009;

    // More air is drawn the faster the pump turns; the share above is for this speed.
    private const double AirReferenceRpm = 2000;

    /// <summary>m3/s, never less than nothing: a stopped pump holds no pressure.</summary>
    /// <param name="unrest">How badly it sucks at this moment beside the mean, one deviation is 1.</param>
    public double Flow(double rpm, double pascal, double dynamicViscosity, double unrest)
    {
        double driven = parameters.CubicMetresPerRevolution * rpm / 60;
        double fed = Math.Min(driven * (1 - Air(rpm, unrest)), Strained(dynamicViscosity, unrest));
        return Math.Max(0, fed - Truck.Flow.ThroughGap(parameters.SlipGap, pascal, dynamicViscosity));
    }

    public double Torque(double pascal) => pascal * parameters.CubicMetresPerRevolution / (2 * Math.PI * MechanicalEfficiency);

    private double Air(double rpm, double unrest)
    {
        double drawn = parameters.AirShare * (0.5 + 0.5 * rpm / AirReferenceRpm);
        return Math.Clamp(drawn * (1 + 0.35 * unrest), 0, 0.95);
    }

    private double Strained(double dynamicViscosity, double unrest) => double.IsPositiveInfinity(parameters.SuctionLimit)
        ? parameters.SuctionLimit
        : parameters.SuctionLimit * Math.Sqrt(StrainerReference / dynamicViscosity) * (1 + 0.04 * unrest);
}
