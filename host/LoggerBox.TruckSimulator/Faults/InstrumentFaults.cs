using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Boards;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Faults;

internal static class InstrumentFaults
{
    private static readonly (int, int)[] LinePairs =
        [(Channel.Main, Channel.Clutch), (Channel.Clutch, Channel.Converter), (Channel.Main, Channel.Converter)];

    // What the tag says in N, F and R. Forward and reverse exchanged is no case here: on a common port nothing would contradict it.
    private static readonly Gear[][] WrongTags =
    [
        [Gear.Forward, Gear.Neutral, Gear.Reverse],
        [Gear.Reverse, Gear.Forward, Gear.Neutral],
        [Gear.Forward, Gear.Reverse, Gear.Neutral],
    ];

    /// <summary>The coil fires this lead twice a cycle, and nobody told the logger.</summary>
    public static FittedTruck PickupScale(FittedTruck fitted, double severity, SeededChance chance) =>
        fitted with { Instruments = fitted.Instruments with { PulsesInThoseRevolutions = 2 * InstrumentParameters.DeclaredPulses } };

    /// <summary>One transducer, any of the three, reads 12 psi too high, engine off too.</summary>
    public static FittedTruck PressureZeroShift(FittedTruck fitted, double severity, SeededChance chance) =>
        fitted with
        {
            Instruments = fitted.Instruments with
            {
                ShiftedChannel = Channel.Main + (int)chance.Between(0, Channel.Count - Channel.Main),
                ShiftPascal = 12 * severity * Units.PascalPerPsi,
            },
        };

    public static FittedTruck PressureLinesSwapped(FittedTruck fitted, double severity, SeededChance chance)
    {
        var (one, other) = LinePairs[(int)chance.Between(0, LinePairs.Length)];
        return fitted with { Instruments = fitted.Instruments with { ExchangedLine = one, ExchangedWith = other } };
    }

    public static FittedTruck GearTagWrong(FittedTruck fitted, double severity, SeededChance chance) =>
        fitted with { Instruments = fitted.Instruments with { TagWiring = WrongTags[(int)chance.Between(0, WrongTags.Length)] } };

    /// <summary>The test was done on a truck from a cold yard.</summary>
    public static FittedTruck OilCold(FittedTruck fitted, double severity, SeededChance chance)
    {
        OilTemperatureParameters warm = fitted.Truck.OilTemperature;
        double celsius = 45 - 35 * severity;
        return fitted with { Truck = fitted.Truck with { OilTemperature = warm with { StartCelsius = celsius, CoolerCelsius = celsius - 5 } } };
    }
}
