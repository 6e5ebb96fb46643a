using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>The lift and tilt pump, which the engine drives too.</summary>
public sealed record WorkHydraulicsParameters(double CubicMetresPerRevolution, double ReliefPascal, double Efficiency);

public sealed class WorkHydraulics(WorkHydraulicsParameters parameters)
{
    // The relief valve opens and the lever's spool moves within about this time.
    private const double LagSeconds = 0.12;

    /// <summary>Load on the engine, N m.</summary>
    public double Torque { get; private set; }

    public double ReliefTorque =>
        parameters.ReliefPascal * parameters.CubicMetresPerRevolution / (2 * Math.PI * parameters.Efficiency);

    public void Step(bool leverHeld, double seconds) =>
        Torque += ((leverHeld ? ReliefTorque : 0) - Torque) * Math.Min(1, seconds / LagSeconds);
}
