using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Faults;

internal static class PressureFaults
{
    /// <summary>Flanks and side plates worn: the pump's own clearances grow.</summary>
    public static FittedTruck PumpWorn(FittedTruck fitted, double severity, SeededChance chance)
    {
        ChargePumpParameters pump = fitted.Truck.Pressures.Pump;
        return WithPressures(fitted, fitted.Truck.Pressures with { Pump = pump with { SlipGap = pump.SlipGap * (1 + 10 * severity) } });
    }

    /// <summary>Spring weak and spool not quite shut.</summary>
    public static FittedTruck RegulatorLow(FittedTruck fitted, double severity, SeededChance chance)
    {
        MainRegulatorParameters regulator = fitted.Truck.Pressures.Regulator;
        return WithPressures(fitted, fitted.Truck.Pressures with
        {
            Regulator = regulator with { CrackPascal = regulator.CrackPascal * (1 - 0.75 * severity), StuckOpenArea = Flow.Area(3.8 * severity) },
        });
    }

    /// <summary>Spool stuck shut: only the pump's safety valve is left, and the converter lives on the fixed feed.</summary>
    public static FittedTruck RegulatorHigh(FittedTruck fitted, double severity, SeededChance chance)
    {
        MainRegulatorParameters regulator = fitted.Truck.Pressures.Regulator;
        return WithPressures(fitted, fitted.Truck.Pressures with
        {
            Regulator = regulator with { CrackPascal = regulator.CrackPascal * (1 + 1.7 * severity) },
        });
    }

    /// <summary>Dirt in the load piston's orifice.</summary>
    public static FittedTruck ModulatorSlow(FittedTruck fitted, double severity, SeededChance chance)
    {
        ClutchModulatorParameters modulator = fitted.Truck.Pressures.Modulator;
        return WithPressures(fitted, fitted.Truck.Pressures with
        {
            Modulator = modulator with { RisePascalPerSecond = modulator.RisePascalPerSecond / (1.5 + 4 * severity) },
        });
    }

    /// <summary>Converter inlet relief held open by dirt.</summary>
    public static FittedTruck ConverterReliefOpen(FittedTruck fitted, double severity, SeededChance chance)
    {
        ConverterCircuitParameters converter = fitted.Truck.Pressures.Converter;
        return WithPressures(fitted, fitted.Truck.Pressures with
        {
            Converter = converter with { ReliefStuckArea = Flow.Area(4 + 5 * severity) },
        });
    }

    private static FittedTruck WithPressures(FittedTruck fitted, PressureCircuitParameters pressures) =>
        fitted with { Truck = fitted.Truck with { Pressures = pressures } };
}
