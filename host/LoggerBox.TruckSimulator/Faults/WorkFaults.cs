using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Faults;

internal static class WorkFaults
{
    public static FittedTruck ReliefHigh(FittedTruck fitted, double severity, SeededChance chance) => WithRelief(fitted, 1 + 0.45 * severity);

    public static FittedTruck ReliefLow(FittedTruck fitted, double severity, SeededChance chance) => WithRelief(fitted, 1 - 0.8 * severity);

    /// <summary>A valve that does not centre, or a kinked return: the pump works all the time.</summary>
    public static FittedTruck Loading(FittedTruck fitted, double severity, SeededChance chance)
    {
        WorkHydraulicsParameters work = fitted.Truck.WorkHydraulics;
        return fitted with { Truck = fitted.Truck with { WorkHydraulics = work with { StandbyPascal = 0.45 * severity * work.ReliefPascal } } };
    }

    private static FittedTruck WithRelief(FittedTruck fitted, double share)
    {
        WorkHydraulicsParameters work = fitted.Truck.WorkHydraulics;
        return fitted with { Truck = fitted.Truck with { WorkHydraulics = work with { ReliefPascal = work.ReliefPascal * share } } };
    }
}
