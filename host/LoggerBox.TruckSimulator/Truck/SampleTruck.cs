namespace LoggerBox.TruckSimulator.Truck;

/// <summary>
/// An invented LPG counterbalance truck of the 2.5 t class, in order. Its figures belong to no maker's truck; their size is common practice.
/// </summary>
public static class SampleTruck
{
    public static TruckParameters Healthy() => new()
    {
        Engine = new EngineParameters
        {
            FullTorque = new Curve(300, 60, 600, 105, 900, 128, 1200, 143, 1500, 150, 1800, 150, 2100, 145, 2400, 136, 2600, 128, 2800, 115),
            IdleCutoff = 762,
            GovernedCutoff = 2508,
            Droop = 250,
        },
        Converter = new ConverterParameters(
            CapacityAt1000: new Curve(0, 36.5, 0.2, 37.0, 0.4, 36.0, 0.6, 32.5, 0.8, 25.0, 0.9, 18.0, 0.95, 11.0, 1, 0),
            TorqueRatio: new Curve(0, 2.25, 0.2, 1.98, 0.4, 1.66, 0.6, 1.36, 0.8, 1.09, 0.87, 1, 1, 1)),
        Pressures = Pressures(),
        ForwardClutch = new ClutchParameters(),
        ReverseClutch = new ClutchParameters(),
        WorkHydraulics = new WorkHydraulicsParameters(CubicMetresPerRevolution: 28e-6, ReliefPascal: 175e5, Efficiency: 0.88),
        OilTemperature = new OilTemperatureParameters(StartCelsius: 80, HeatCapacity: 42_000, CoolerCelsius: 68, CoolingPerSecond: 1 / 250.0),
    };

    private static PressureCircuitParameters Pressures() => new()
    {
        Pump = new ChargePumpParameters(CubicMetresPerRevolution: 16e-6, SlipGap: 3.6e-13),
        Regulator = new MainRegulatorParameters(CrackPascal: 9.6 * Units.PascalPerBar, OverridePascal: PerLitreAMinute(0.1)),
        SafetyValve = new MainRegulatorParameters(CrackPascal: 19 * Units.PascalPerBar, OverridePascal: PerLitreAMinute(0.15)),
        ConverterFeedArea = Flow.Area(3.3),
        ClutchFeedArea = Flow.Area(3.2),
        ValveBodyGap = 1e-13,
        Modulator = new ClutchModulatorParameters(TouchPascal: 1.3 * Units.PascalPerBar, RisePascalPerSecond: 6.2 * Units.PascalPerBar),
        Converter = new ConverterCircuitParameters(
            BackPressurePascal: 0.5 * Units.PascalPerBar, OutletArea: Flow.Area(7.3), CoolerGap: 2e-10, ReliefPascal: 5 * Units.PascalPerBar),
    };

    private static double PerLitreAMinute(double bar) =>
        bar * Units.PascalPerBar / Units.CubicMetresPerSecondPerLitrePerMinute;
}
