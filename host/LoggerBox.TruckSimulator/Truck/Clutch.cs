using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>One multi-plate clutch: piston that must fill, seals that leak, plates that carry. SI units.</summary>
public sealed record ClutchParameters
{
    public double FillVolume { get; init; } = 45e-6;

    /// <summary>Return springs: pressure at the stroke's beginning and end.</summary>
    public double SpringStartPascal { get; init; } = 0.5 * Units.PascalPerBar;

    public double SpringEndPascal { get; init; } = 0.9 * Units.PascalPerBar;

    /// <summary>Healthy seal rings, m3.</summary>
    public double SealGap { get; init; } = 0.5e-13;

    /// <summary>Damage to seal ring, piston or passage, m2.</summary>
    public double LeakArea { get; init; }

    public double PlateFriction { get; init; } = 0.12;

    public int FrictionFaces { get; init; } = 14;

    public double OuterRadius { get; init; } = 0.055;

    public double InnerRadius { get; init; } = 0.040;

    public double PistonArea { get; init; } = 74.6e-4;

    public double SpringForce { get; init; } = 1500;
}

public sealed class Clutch(ClutchParameters parameters)
{
    // Drum, passage and oil with a little air: stiff once the plates touch.
    private const double Compliance = 6e-12;
    private const double DrainArea = 2.5e-5;
    private double _filled;
    private double _squeeze;

    public bool PlatesTouch => _filled >= parameters.FillVolume;

    public double Pascal => Math.Max(_squeeze, PistonPascal);

    /// <summary>Torque that it can carry, N m: T = mu z r (p A - F), r the mean friction radius.</summary>
    public double Capacity => CapacityAt(Pascal);

    private double PistonPascal
    {
        get
        {
            double share = _filled / parameters.FillVolume;
            double spring = parameters.SpringStartPascal + share * (parameters.SpringEndPascal - parameters.SpringStartPascal);
            return spring * Math.Min(1, share / 0.03);
        }
    }

    public double CapacityAt(double pascal)
    {
        double outer = parameters.OuterRadius;
        double inner = parameters.InnerRadius;
        double radius = 2.0 / 3 * (Math.Pow(outer, 3) - Math.Pow(inner, 3)) / (outer * outer - inner * inner);
        double force = Math.Max(0, pascal * parameters.PistonArea - parameters.SpringForce);
        return parameters.PlateFriction * parameters.FrictionFaces * radius * force;
    }

    public double Leak(double density, double dynamicViscosity) =>
        Flow.ThroughOrifice(parameters.LeakArea, Pascal, density) + Flow.ThroughGap(parameters.SealGap, Pascal, dynamicViscosity);

    public void Step(double inflow, bool drained, double density, double dynamicViscosity, double seconds)
    {
        double drain = drained ? Flow.ThroughOrifice(DrainArea, Pascal, density) : 0;
        double change = (inflow - drain - Leak(density, dynamicViscosity)) * seconds;
        if (PlatesTouch && (change > 0 || _squeeze > parameters.SpringEndPascal))
        {
            _squeeze = Math.Max(0, Math.Max(_squeeze, parameters.SpringEndPascal) + change / Compliance);
            return;
        }

        _squeeze = 0;
        _filled = Math.Clamp(_filled + change, 0, parameters.FillVolume);
    }
}
