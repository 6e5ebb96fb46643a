using System;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Faults;

internal static class EngineFaults
{
    /// <summary>Height over which the density of air falls to 1/e, metres; common practice for the lower atmosphere.</summary>
    private const double DensityHeight = 10_400;

    // Share of its travel at which the throttle stands when the engine only turns itself, its pumps and an empty converter.
    private const double NoLoadOpening = 0.24;

    /// <summary>Air, fuel or spark: up to half of the torque gone over the whole range.</summary>
    public static FittedTruck PowerLow(FittedTruck fitted, double severity, SeededChance chance) =>
        WithEngine(fitted, fitted.Truck.Engine with { TorqueShare = 1 - 0.5 * severity });

    /// <summary>A controller lets the pedal go part of the way only and cuts the torque as well.</summary>
    public static FittedTruck LimitedByControl(FittedTruck fitted, double severity, SeededChance chance) =>
        WithEngine(fitted, fitted.Truck.Engine with { PedalCeiling = 0.8 - 0.45 * severity, TorqueShare = 1 - 0.25 * severity });

    public static FittedTruck GovernorLow(FittedTruck fitted, double severity, SeededChance chance) =>
        WithEngine(fitted, fitted.Truck.Engine with { GovernedCutoff = fitted.Truck.Engine.GovernedCutoff - 320 * severity });

    public static FittedTruck GovernorHigh(FittedTruck fitted, double severity, SeededChance chance) =>
        WithEngine(fitted, fitted.Truck.Engine with { GovernedCutoff = fitted.Truck.Engine.GovernedCutoff + 320 * severity });

    /// <summary>A tired spring: the same speed without load, reached with the throttle as little open, and far less of it under load.</summary>
    public static FittedTruck GovernorDroop(FittedTruck fitted, double severity, SeededChance chance)
    {
        EngineParameters engine = fitted.Truck.Engine;
        double wider = engine.Droop * (1 + 3 * severity);
        double unloaded = NoLoadOpening * (wider - engine.Droop);
        return WithEngine(fitted, engine with
        {
            Droop = wider,
            GovernedCutoff = engine.GovernedCutoff + unloaded,
            IdleCutoff = engine.IdleCutoff + unloaded,
        });
    }

    /// <summary>A perfect engine where the air is thin.</summary>
    public static FittedTruck AirThin(FittedTruck fitted, double severity, SeededChance chance)
    {
        double share = 1 - 0.3 * severity;
        FittedTruck high = WithEngine(fitted, fitted.Truck.Engine with { AirShare = share });
        return high with { AltitudeMetres = -DensityHeight * Math.Log(share) };
    }

    private static FittedTruck WithEngine(FittedTruck fitted, EngineParameters engine) =>
        fitted with { Truck = fitted.Truck with { Engine = engine } };
}
