using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.Simulator.Tests;

/// <summary>Runs the truck's own engine, converter and driveline on full pedal until nothing moves any more.</summary>
internal static class SteadyStall
{
    public static (double Rpm, double Torque) Of(Curve fullTorque, ConverterParameters converter, double accessoryTorque = 0, double torqueShare = 1)
    {
        const double Seconds = 0.001;
        var engine = new Engine(new EngineParameters
        {
            FullTorque = fullTorque,
            TorqueShare = torqueShare,
            IdleCutoff = 800,
            GovernedCutoff = 5000,
            Droop = 250,
            FrictionTorque = 0,
            AccessoryTorque = accessoryTorque,
        });
        var torqueConverter = new TorqueConverter(converter);
        var driveline = new Driveline(new DrivelineParameters(), torqueConverter);
        var controls = new Controls { Ignition = true, Starter = true, Pedal = 1, Selector = Selector.Forward };
        for (int i = 0; i < 20_000; i++)
        {
            double torque = engine.Step(Units.Rpm(driveline.EngineSpeed), controls, 0, Seconds);
            driveline.Step(torque, clutchCapacity: 1e5, controls, Seconds);
        }

        double rpm = Units.Rpm(driveline.EngineSpeed);
        return (rpm, torqueConverter.At(rpm, 0).Impeller);
    }
}
