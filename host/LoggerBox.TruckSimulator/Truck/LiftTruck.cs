using System;
using LoggerBox.TruckSimulator.Chance;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>The whole truck on fixed steps of one millisecond.</summary>
public sealed class LiftTruck
{
    public const double StepSeconds = 0.001;
    private const double HuntingMemorySeconds = 0.35;
    private readonly Engine _engine;
    private readonly Driveline _driveline;
    private readonly PressureCircuit _pressures;
    private readonly WorkHydraulics _work;
    private readonly OilTemperature _oil;
    private readonly PlateHeat _forwardPlates = new();
    private readonly PlateHeat _reversePlates = new();
    private readonly Wander _hunting;
    private readonly bool _pumpIsDriven;

    public LiftTruck(TruckParameters parameters, SeededChance chance)
    {
        ArgumentNullException.ThrowIfNull(parameters);
        _engine = new Engine(parameters.Engine);
        _driveline = new Driveline(parameters.Driveline, new TorqueConverter(parameters.Converter));
        _pressures = new PressureCircuit(parameters.Pressures, parameters.ForwardClutch, parameters.ReverseClutch, chance);
        _pumpIsDriven = parameters.Driveline.DrivesConverter;
        _work = new WorkHydraulics(parameters.WorkHydraulics);
        _oil = new OilTemperature(parameters.OilTemperature);
        _hunting = new Wander(chance, parameters.HuntingRpm, HuntingMemorySeconds);
    }

    public Controls Controls { get; } = new();

    public double Rpm => Units.Rpm(_driveline.EngineSpeed);

    public double TurbineRpm => Units.Rpm(_driveline.TurbineSpeed);

    public double MainPascal => _pressures.MainPascal;

    public double ClutchPascal => _pressures.ClutchPascal;

    public double ConverterPascal => _pressures.ConverterPascal;

    public double OilCelsius => _oil.Celsius;

    public void Step()
    {
        _hunting.Step(StepSeconds);
        _work.Step(Controls.WorkLeverHeld, StepSeconds);
        _pressures.Step(_pumpIsDriven ? Rpm : 0, Controls.Inching ? Selector.Neutral : Controls.Selector, _oil.Celsius, StepSeconds);
        double torque = _engine.Step(Rpm, Controls, _hunting.Value, StepSeconds) - Loads();
        _driveline.Step(torque, ClutchCapacity(), Controls, StepSeconds);
        _forwardPlates.Step(Controls.Selector == Selector.Forward ? _driveline.ClutchLoss : 0, StepSeconds);
        _reversePlates.Step(Controls.Selector == Selector.Reverse ? _driveline.ClutchLoss : 0, StepSeconds);
        _oil.Step(_driveline.Loss, _driveline.EngineSpeed, StepSeconds);
    }

    private double Loads() => Rpm > 0 ? _pressures.PumpTorque + _work.Torque : 0;

    private double ClutchCapacity() => Controls.Selector switch
    {
        Selector.Forward => _pressures.Forward.Capacity * _forwardPlates.Friction,
        Selector.Reverse => _pressures.Reverse.Capacity * _reversePlates.Friction,
        _ => 0,
    };
}
