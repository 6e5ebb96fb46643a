using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>The lift and tilt pump, which the engine drives too.</summary>
/// <param name="StandbyPascal">What the pump works against with every lever in neutral: next to nothing in an open circuit in order.</param>
public sealed record WorkHydraulicsParameters(double CubicMetresPerRevolution, double ReliefPascal, double Efficiency, double StandbyPascal = 0);

public sealed class WorkHydraulics(WorkHydraulicsParameters parameters)
{
    // The relief valve opens and the lever's spool moves within about this time.
    private const double LagSeconds = 0.12;

    /// <summary>Load on the engine, N m.</summary>
    public double Torque { get; private set; }

    public double ReliefTorque => TorqueAt(parameters.ReliefPascal);

    public void Step(bool leverHeld, double seconds) =>
        Torque += (TorqueAt(leverHeld ? parameters.ReliefPascal : parameters.StandbyPascal) - Torque) * Math.Min(1, seconds / LagSeconds);

    private double TorqueAt(double pascal) => pascal * parameters.CubicMetresPerRevolution / (2 * Math.PI * parameters.Efficiency);
}
