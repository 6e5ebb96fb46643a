using LoggerBox.Protocol.Records;
using LoggerBox.TruckSimulator.Boards;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Faults;

internal static class InstrumentFaults
{
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
}
