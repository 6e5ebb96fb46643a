using System;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Faults;

internal static class PressureFaults
{
    /// <summary>Flanks and side plates worn: the pump's own clearances grow.</summary>
    public static FittedTruck PumpWorn(FittedTruck fitted, double severity, SeededChance chance) =>
        WithPump(fitted, pump => pump with { SlipGap = pump.SlipGap * (1 + 10 * severity) });

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
    public static FittedTruck ModulatorSlow(FittedTruck fitted, double severity, SeededChance chance) =>
        WithModulator(fitted, modulator => modulator with { RisePascalPerSecond = modulator.RisePascalPerSecond / (1.5 + 4 * severity) });

    /// <summary>Converter inlet relief held open by dirt.</summary>
    public static FittedTruck ConverterReliefOpen(FittedTruck fitted, double severity, SeededChance chance)
    {
        ConverterCircuitParameters converter = fitted.Truck.Pressures.Converter;
        return WithPressures(fitted, fitted.Truck.Pressures with
        {
            Converter = converter with { ReliefStuckArea = Flow.Area(4 + 5 * severity) },
        });
    }

    /// <summary>Low oil that foams, or a suction joint that draws air; what reaches the converter carries less torque.</summary>
    public static FittedTruck OilAerated(FittedTruck fitted, double severity, SeededChance chance)
    {
        ConverterParameters sound = fitted.Truck.Converter;
        var foaming = sound with { CapacityAt1000 = sound.CapacityAt1000.Reshape((_, capacity) => capacity * (1 - 0.25 * severity)) };
        FittedTruck drawing = WithPump(fitted, pump => pump with { AirShare = 0.15 + 0.45 * severity });
        return drawing with { Truck = drawing.Truck with { Converter = foaming } };
    }

    /// <summary>A strainer that lets through what the pump takes at a middling speed, and no more.</summary>
    public static FittedTruck StrainerRestricted(FittedTruck fitted, double severity, SeededChance chance) =>
        WithPump(fitted, pump => pump with { SuctionLimit = pump.CubicMetresPerRevolution / 60 * (1900 - 1150 * severity) });

    /// <summary>The orifice is gone: full pressure as soon as the plates touch.</summary>
    public static FittedTruck ModulatorHarsh(FittedTruck fitted, double severity, SeededChance chance) =>
        WithModulator(fitted, modulator => modulator with
        {
            RisePascalPerSecond = modulator.RisePascalPerSecond * (1.3 + 30 * severity * severity),
            TouchPascal = modulator.TouchPascal * (1 + 3 * severity),
        });

    /// <summary>Stuck part of the way: it lets no more than part of the main pressure through.</summary>
    public static FittedTruck ModulatorLow(FittedTruck fitted, double severity, SeededChance chance) =>
        WithModulator(fitted, modulator => modulator with { CeilingPascal = fitted.Truck.Pressures.Regulator.CrackPascal * (0.92 - 0.6 * severity) });

    /// <summary>The inching valve's spool stays on its way: part of the pressure, as when creeping.</summary>
    public static FittedTruck InchingNotReleased(FittedTruck fitted, double severity, SeededChance chance) =>
        WithPressures(fitted, fitted.Truck.Pressures with { InchingShare = 0.97 - 0.6 * severity });

    /// <summary>Lever or linkage short of the detent, in one direction or in both.</summary>
    public static FittedTruck SelectorNotEngaged(FittedTruck fitted, double severity, SeededChance chance)
    {
        int directions = (int)chance.Between(0, 3);
        return WithPressures(fitted, fitted.Truck.Pressures with { FeedsForward = directions == 1, FeedsReverse = directions == 0 });
    }

    /// <summary>A drilling of converter or lubrication stands open; main loses a little as well.</summary>
    public static FittedTruck LubePlugMissing(FittedTruck fitted, double severity, SeededChance chance)
    {
        PressureCircuitParameters sound = fitted.Truck.Pressures;
        return WithPressures(fitted, sound with
        {
            Converter = sound.Converter with { ReliefStuckArea = Flow.Area(4 + 5 * severity) },
            MainLeakArea = Flow.Area(0.9 * severity),
        });
    }

    /// <summary>The valve that holds the converter's outlet back is stuck shut as far as it goes, its relief as well.</summary>
    public static FittedTruck ConverterReliefClosed(FittedTruck fitted, double severity, SeededChance chance)
    {
        ConverterCircuitParameters sound = fitted.Truck.Pressures.Converter;
        return WithPressures(fitted, fitted.Truck.Pressures with
        {
            Converter = sound with
            {
                BackPressurePascal = sound.BackPressurePascal + 4.5 * severity * Units.PascalPerBar,
                ReliefPascal = sound.ReliefPascal * (1 + 1.5 * severity),
            },
        });
    }

    public static FittedTruck CoolerRestricted(FittedTruck fitted, double severity, SeededChance chance)
    {
        ConverterCircuitParameters sound = fitted.Truck.Pressures.Converter;
        double open = 1 - 0.65 * severity;
        return WithPressures(fitted, fitted.Truck.Pressures with
        {
            Converter = sound with { OutletArea = sound.OutletArea * open, CoolerGap = sound.CoolerGap * open * open * open },
        });
    }

    private static FittedTruck WithPump(FittedTruck fitted, Func<ChargePumpParameters, ChargePumpParameters> change) =>
        WithPressures(fitted, fitted.Truck.Pressures with { Pump = change(fitted.Truck.Pressures.Pump) });

    private static FittedTruck WithModulator(FittedTruck fitted, Func<ClutchModulatorParameters, ClutchModulatorParameters> change) =>
        WithPressures(fitted, fitted.Truck.Pressures with { Modulator = change(fitted.Truck.Pressures.Modulator) });

    private static FittedTruck WithPressures(FittedTruck fitted, PressureCircuitParameters pressures) =>
        fitted with { Truck = fitted.Truck with { Pressures = pressures } };
}
