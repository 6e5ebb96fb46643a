using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>Full-load torque at the flywheel, all-speed governor, friction. Speeds in rpm, torques in N m.</summary>
public sealed record EngineParameters
{
    public required Curve FullTorque { get; init; }

    /// <summary>Share of the full torque that the engine still makes: 1 is a healthy one.</summary>
    public double TorqueShare { get; init; } = 1;

    /// <summary>Air in the cylinders beside that at sea level: what burns goes with it, what rubs does not.</summary>
    public double AirShare { get; init; } = 1;

    /// <summary>A controller that holds the engine back passes no more pedal than this on; 1 where none does.</summary>
    public double PedalCeiling { get; init; } = 1;

    /// <summary>Speeds at which the governor has closed the throttle, pedal released and to the floor.</summary>
    public required double IdleCutoff { get; init; }

    public required double GovernedCutoff { get; init; }

    /// <summary>Speed drop from closed to fully open throttle.</summary>
    public required double Droop { get; init; }

    /// <summary>Governor, throttle and manifold together.</summary>
    public double LagSeconds { get; init; } = 0.09;

    public double FrictionTorque { get; init; } = 25;

    public double AccessoryTorque { get; init; } = 8;
}

public sealed class Engine(EngineParameters parameters)
{
    private const double FiringSpeed = 180;
    private const double StarterSpeed = 260;
    private const double StarterTorque = 90;
    private double _opening;

    /// <summary>Torque on crankshaft and flywheel before any load, N m.</summary>
    /// <param name="rpm">Engine speed.</param>
    /// <param name="controls">Pedal, ignition, starter.</param>
    /// <param name="hunting">How far the governor's idea of the speed is off, rpm.</param>
    /// <param name="seconds">Step.</param>
    public double Step(double rpm, Controls controls, double hunting, double seconds)
    {
        ArgumentNullException.ThrowIfNull(controls);
        double pedal = Math.Min(controls.Pedal, parameters.PedalCeiling);
        double cutoff = parameters.IdleCutoff + pedal * (parameters.GovernedCutoff - parameters.IdleCutoff);
        bool fires = controls.Ignition && rpm > FiringSpeed;
        double wanted = fires ? Math.Clamp((cutoff + hunting - rpm) / parameters.Droop, 0, 1) : 0;
        _opening += (wanted - _opening) * Math.Min(1, seconds / parameters.LagSeconds);
        double friction = rpm > 0 ? parameters.FrictionTorque + parameters.AccessoryTorque : 0;
        double starter = controls.Starter && rpm < StarterSpeed ? StarterTorque : 0;
        double combustion = fires
            ? _opening * parameters.AirShare * (parameters.TorqueShare * parameters.FullTorque.At(rpm) + parameters.FrictionTorque)
            : 0;
        return combustion + starter - friction;
    }
}
