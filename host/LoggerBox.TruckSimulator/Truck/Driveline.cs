using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>Inertias in kg m2 about their own shafts, the output's about the turbine shaft; torques in N m.</summary>
public sealed record DrivelineParameters
{
    public double EngineInertia { get; init; } = 0.5;

    public double TurbineInertia { get; init; } = 0.05;

    public double WheelsInertia { get; init; } = 0.5;

    public double WheelsDrag { get; init; } = 9;

    public double BrakeTorque { get; init; } = 150;

    public double TurbineDrag { get; init; } = 2;

    /// <summary>What turbine and input splines still carry, N m.</summary>
    public double InputTorqueLimit { get; init; } = double.PositiveInfinity;

    /// <summary>False where the drive plate is torn: the engine turns neither converter nor charge pump.</summary>
    public bool DrivesConverter { get; init; } = true;
}

/// <summary>Engine, converter, the clutch that is fed, and what it turns: clear wheels, or nothing at all on a braked truck.</summary>
public sealed class Driveline(DrivelineParameters parameters, TorqueConverter converter)
{
    private double _engine;
    private double _turbine;
    private double _wheels;

    /// <summary>Engine speed, rad/s.</summary>
    public double EngineSpeed => _engine;

    public double TurbineSpeed => _turbine;

    /// <summary>Turned into heat in converter and clutch, W.</summary>
    public double Loss { get; private set; }

    /// <summary>Of it in the plates that slip, W.</summary>
    public double ClutchLoss { get; private set; }

    /// <param name="engineTorque">Flywheel torque less all other loads.</param>
    /// <param name="clutchCapacity">What the selected clutch can carry; 0 in neutral.</param>
    /// <param name="controls">Set-up, brake and direction.</param>
    /// <param name="seconds">Step.</param>
    public void Step(double engineTorque, double clutchCapacity, Controls controls, double seconds)
    {
        ArgumentNullException.ThrowIfNull(controls);
        ConverterTorques torques = parameters.DrivesConverter ? converter.At(Units.Rpm(_engine), Units.Rpm(_turbine)) : default;
        double capacity = Math.Min(clutchCapacity, parameters.InputTorqueLimit);
        double direction = controls.Selector == Selector.Reverse ? -1 : 1;
        double output = controls.WheelsClear ? _wheels * direction : 0;
        double turbineTorque = torques.Turbine - Drag(parameters.TurbineDrag, _turbine);
        double wheelsDrag = parameters.WheelsDrag + (controls.Brake ? parameters.BrakeTorque : 0);
        double outputTorque = -Drag(wheelsDrag, output);
        double carried = Math.Clamp(
            TorqueToLock(turbineTorque, output, outputTorque, controls.WheelsClear, seconds), -capacity, capacity);

        ClutchLoss = Math.Abs(carried * (_turbine - output));
        Loss = Math.Max(0, torques.Impeller * _engine - torques.Turbine * _turbine) + ClutchLoss;
        _turbine += (turbineTorque - carried) * seconds / parameters.TurbineInertia;
        _wheels = controls.WheelsClear ? direction * (output + (carried + outputTorque) * seconds / parameters.WheelsInertia) : 0;
        _engine = Math.Max(0, _engine + (engineTorque - torques.Impeller) * seconds / parameters.EngineInertia);
    }

    // The torque that makes both sides of the clutch turn alike at the end of this step: exact, and stable at any step.
    private double TorqueToLock(double turbineTorque, double output, double outputTorque, bool outputTurns, double seconds)
    {
        double turbine = parameters.TurbineInertia;
        double wheels = parameters.WheelsInertia;
        double apart = _turbine - output;
        return outputTurns
            ? (apart / seconds * turbine * wheels + turbineTorque * wheels - outputTorque * turbine) / (turbine + wheels)
            : apart / seconds * turbine + turbineTorque;
    }

    // Full drag from about 10 rpm up, fading to nothing at rest so that it never pushes backwards.
    private static double Drag(double torque, double speed) => torque * Math.Clamp(speed, -1, 1);
}
