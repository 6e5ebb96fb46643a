using System;
using LoggerBox.TruckSimulator.Chance;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>What makes two trucks of one design differ while both are in order: setting, manufacture, honest wear. Sizes: common practice, no source.</summary>
public static class TruckVariation
{
    public static TruckParameters Of(TruckParameters design, SeededChance chance)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentNullException.ThrowIfNull(chance);
        double torque = Near(chance, 0.015);
        double capacity = Near(chance, 0.015);
        return design with
        {
            Engine = design.Engine with
            {
                TorqueShare = torque,
                GovernedCutoff = design.Engine.GovernedCutoff + 12 * Bounded(chance),
                IdleCutoff = design.Engine.IdleCutoff + 10 * Bounded(chance),
                Droop = design.Engine.Droop * Near(chance, 0.03),
            },
            Converter = design.Converter with { CapacityAt1000 = design.Converter.CapacityAt1000.Reshape((_, value) => value * capacity) },
            Pressures = Pressures(design.Pressures, chance),
            ForwardClutch = Clutch(design.ForwardClutch, chance),
            ReverseClutch = Clutch(design.ReverseClutch, chance),
            WorkHydraulics = design.WorkHydraulics with { ReliefPascal = design.WorkHydraulics.ReliefPascal * Near(chance, 0.02) },
            OilTemperature = design.OilTemperature with { StartCelsius = chance.Between(74, 86) },
        };
    }

    private static PressureCircuitParameters Pressures(PressureCircuitParameters design, SeededChance chance) => design with
    {
        Pump = design.Pump with { SlipGap = design.Pump.SlipGap * Math.Exp(0.15 * Bounded(chance)) },
        Regulator = design.Regulator with { CrackPascal = design.Regulator.CrackPascal * Near(chance, 0.012) },
        Modulator = design.Modulator with { RisePascalPerSecond = design.Modulator.RisePascalPerSecond * Near(chance, 0.06) },
        Converter = design.Converter with { OutletArea = design.Converter.OutletArea * Near(chance, 0.03) },
    };

    private static ClutchParameters Clutch(ClutchParameters design, SeededChance chance) => design with
    {
        FillVolume = design.FillVolume * Near(chance, 0.04),
        SealGap = design.SealGap * Math.Exp(0.4 * Bounded(chance)),
        PlateFriction = design.PlateFriction * Near(chance, 0.03),
    };

    private static double Near(SeededChance chance, double deviation) => 1 + deviation * Bounded(chance);

    // Nobody lets a truck out of the factory that is more than two deviations off.
    private static double Bounded(SeededChance chance) => Math.Clamp(chance.Normal(), -2, 2);
}
