using System;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Faults;

internal static class ConverterFaults
{
    // From here on the stator of a sound converter freewheels anyway: normal once the truck moves.
    private const double CouplingRatio = 0.85;

    /// <summary>
    /// The stator turns backwards at stall: the converter takes far more torque (K factor down to 0.67 of its value) and hardly multiplies it.
    /// </summary>
    public static FittedTruck StatorSlipping(FittedTruck fitted, double severity, SeededChance chance)
    {
        ConverterParameters sound = fitted.Truck.Converter;
        double kFactor = 0.75 - 0.09 * severity;
        double gain = 1 / (kFactor * kFactor);
        var slipping = new ConverterParameters(
            sound.CapacityAt1000.Reshape((ratio, capacity) => capacity * (1 + (gain - 1) * Slip(ratio))),
            sound.TorqueRatio.Reshape((ratio, multiplied) => multiplied + (1 - multiplied) * 0.9 * Slip(ratio)));
        return fitted with { Truck = fitted.Truck with { Converter = slipping } };
    }

    /// <summary>The turbine's or input's spline turns in its hub; or the drive plate is torn, and the charge pump stands as well.</summary>
    public static FittedTruck DriveInputBroken(FittedTruck fitted, double severity, SeededChance chance)
    {
        DrivelineParameters sound = fitted.Truck.Driveline;
        bool spline = chance.Happens(0.6);
        return fitted with
        {
            Truck = fitted.Truck with
            {
                Driveline = spline ? sound with { InputTorqueLimit = 12 * (1 - severity) } : sound with { DrivesConverter = false },
            },
        };
    }

    private static double Slip(double speedRatio) => Math.Clamp(1 - speedRatio / CouplingRatio, 0, 1);
}
