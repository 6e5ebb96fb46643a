using System.Collections.Generic;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>Invented trucks of several classes, each as its maker would have drawn it. The figures belong to nobody's truck.</summary>
public static class TruckDesigns
{
    public static IReadOnlyList<(string Name, TruckParameters Truck)> All { get; } =
    [
        ("gas-2500", SampleTruck.Healthy()),
        ("petrol-1800", Small()),
        ("diesel-4500", Diesel()),
        ("diesel-3500, converter fed apart", FedApart()),
    ];

    /// <summary>Small petrol engine with a soft governor, low main pressure.</summary>
    private static TruckParameters Small()
    {
        TruckParameters sample = SampleTruck.Healthy();
        return sample with
        {
            Engine = new EngineParameters
            {
                FullTorque = new Curve(300, 40, 700, 78, 1100, 100, 1600, 112, 2000, 114, 2400, 110, 2800, 100, 3100, 88),
                IdleCutoff = 830,
                GovernedCutoff = 2790,
                Droop = 330,
                FrictionTorque = 20,
                AccessoryTorque = 6,
            },
            Converter = Scaled(sample.Converter, 0.66),
            Pressures = sample.Pressures with
            {
                Pump = new ChargePumpParameters(CubicMetresPerRevolution: 12.5e-6, SlipGap: 2.6e-13),
                Regulator = sample.Pressures.Regulator with { CrackPascal = 8.2 * Units.PascalPerBar },
                ClutchFeedArea = Flow.Area(3.0),
                Converter = sample.Pressures.Converter with { OutletArea = Flow.Area(6.4) },
            },
            WorkHydraulics = new WorkHydraulicsParameters(CubicMetresPerRevolution: 20e-6, ReliefPascal: 160e5, Efficiency: 0.87),
            HuntingRpm = 6,
        };
    }

    /// <summary>Mechanical governor, stiff; higher main pressure, clutches well below it.</summary>
    private static TruckParameters Diesel()
    {
        TruckParameters sample = SampleTruck.Healthy();
        return sample with
        {
            Engine = new EngineParameters
            {
                FullTorque = new Curve(300, 110, 600, 175, 900, 215, 1200, 238, 1500, 246, 1800, 243, 2100, 232, 2300, 222, 2500, 205),
                IdleCutoff = 790,
                GovernedCutoff = 2430,
                Droop = 180,
                FrictionTorque = 38,
                AccessoryTorque = 12,
            },
            Converter = Scaled(sample.Converter, 1.62),
            Pressures = sample.Pressures with
            {
                Pump = new ChargePumpParameters(CubicMetresPerRevolution: 21e-6, SlipGap: 3.4e-13),
                Regulator = sample.Pressures.Regulator with { CrackPascal = 11.5 * Units.PascalPerBar },
                SafetyValve = sample.Pressures.SafetyValve with { CrackPascal = 22 * Units.PascalPerBar },
                ClutchFeedArea = Flow.Area(3.8),
                Modulator = sample.Pressures.Modulator with { CeilingPascal = 9.2 * Units.PascalPerBar },
                Converter = sample.Pressures.Converter with { OutletArea = Flow.Area(8.2), ReliefPascal = 6 * Units.PascalPerBar },
            },
            ForwardClutch = new ClutchParameters { FillVolume = 60e-6, PistonArea = 95e-4, FrictionFaces = 16 },
            ReverseClutch = new ClutchParameters { FillVolume = 60e-6, PistonArea = 95e-4, FrictionFaces = 16 },
            WorkHydraulics = new WorkHydraulicsParameters(CubicMetresPerRevolution: 40e-6, ReliefPascal: 185e5, Efficiency: 0.88),
            Driveline = new DrivelineParameters { EngineInertia = 0.8 },
            HuntingRpm = 3,
        };
    }

    /// <summary>The converter has an orifice of its own from main: a clutch that leaks hardly takes anything from it.</summary>
    private static TruckParameters FedApart()
    {
        TruckParameters diesel = Diesel();
        return diesel with
        {
            Engine = diesel.Engine with { GovernedCutoff = 2530, Droop = 210, IdleCutoff = 760 },
            Converter = Scaled(diesel.Converter, 0.86),
            Pressures = diesel.Pressures with
            {
                SpillToConverter = 0,
                ConverterFeedArea = Flow.Area(3.9),
                Regulator = diesel.Pressures.Regulator with { CrackPascal = 10.2 * Units.PascalPerBar },
                Modulator = diesel.Pressures.Modulator with { CeilingPascal = 40 * Units.PascalPerBar },
                Converter = diesel.Pressures.Converter with { OutletArea = Flow.Area(5.2) },
            },
        };
    }

    private static ConverterParameters Scaled(ConverterParameters sample, double factor) =>
        sample with { CapacityAt1000 = sample.CapacityAt1000.Reshape((_, capacity) => capacity * factor) };
}
