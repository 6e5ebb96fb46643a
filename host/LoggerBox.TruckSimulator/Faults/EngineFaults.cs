using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Faults;

internal static class EngineFaults
{
    /// <summary>Air, fuel or spark: up to half of the torque gone over the whole range.</summary>
    public static FittedTruck PowerLow(FittedTruck fitted, double severity, SeededChance chance) =>
        WithEngine(fitted, fitted.Truck.Engine with { TorqueShare = 1 - 0.5 * severity });

    public static FittedTruck GovernorLow(FittedTruck fitted, double severity, SeededChance chance) =>
        WithEngine(fitted, fitted.Truck.Engine with { GovernedCutoff = fitted.Truck.Engine.GovernedCutoff - 320 * severity });

    public static FittedTruck GovernorHigh(FittedTruck fitted, double severity, SeededChance chance) =>
        WithEngine(fitted, fitted.Truck.Engine with { GovernedCutoff = fitted.Truck.Engine.GovernedCutoff + 320 * severity });

    private static FittedTruck WithEngine(FittedTruck fitted, EngineParameters engine) =>
        fitted with { Truck = fitted.Truck with { Engine = engine } };
}
