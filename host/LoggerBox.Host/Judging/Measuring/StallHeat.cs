using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>
/// What a stall did to the oil: at stall nothing leaves the converter but heat, so all power that the pump takes goes into the oil. Shown, not judged.
/// </summary>
/// <param name="PowerWatts">With its expanded uncertainty.</param>
/// <param name="RiseKelvin">Mean rise of the oil: between oil alone and oil with metal; null without the amount of oil.</param>
/// <param name="WaitSeconds">In neutral, until a twentieth of the rise is left at usual cooling; null without the amount of oil.</param>
public sealed record StallHeat(
    Gear Gear, double StartSeconds, double DurationSeconds, double PowerWatts, double PowerUncertainty, double? RiseKelvin, double? RiseUncertainty, double? WaitSeconds)
{
    /// <summary>J/(kg K) of transmission oil and of steel; W/K of a cooler in neutral. Common practice, no source.</summary>
    private const double OilHeat = 2000;
    private const double MetalHeat = 460;
    private const double CoolerWattsPerKelvin = 250;

    /// <summary>A printed capacity factor belongs to a new converter and to oil without air: 3 % either way.</summary>
    private const double FactorHalfWidth = 0.03;

    /// <summary>Metal that warms with a kilogram of oil where the sheet does not say, kilograms.</summary>
    private const double UsualMetal = 40.0 / 12;

    public static IReadOnlyList<StallHeat> Of(StepReadings steps, ConverterData? converter)
    {
        ArgumentNullException.ThrowIfNull(steps);
        return converter is null
            ? []
            : [.. steps.All.Where(hold => hold.Step is Step.StallForward or Step.StallReverse or Step.StallInGear && hold.Rpm is not null).Select(hold => Of(hold, converter))];
    }

    /// <summary>Torque is (n / K) squared, so power goes with the cube of the speed.</summary>
    public static Measured Power(Measured rpm, double capacityFactor)
    {
        ArgumentNullException.ThrowIfNull(rpm);
        double torque = Math.Pow(rpm.Value / capacityFactor, 2);
        double watts = torque * rpm.Value * Math.PI / 30;
        double bySpeed = rpm.Value > 0 ? 3 * watts / rpm.Value : 0;
        return new Measured(watts, rpm.Budget.Scaled(bySpeed).With(new UncertaintyBudget().AddRectangular(2 * FactorHalfWidth * watts)));
    }

    /// <summary>Kelvin a second that so much power gives.</summary>
    public static double KelvinPerSecond(double watts, double oilKilograms, double metalKilograms) =>
        watts / ((oilKilograms * OilHeat) + (metalKilograms * MetalHeat));

    /// <summary>Time constant of cooling in neutral, seconds.</summary>
    public static double CoolingSeconds(double oilKilograms, double metalKilograms) =>
        ((oilKilograms * OilHeat) + (metalKilograms * MetalHeat)) / CoolerWattsPerKelvin;

    private static StallHeat Of(MeasuredHold hold, ConverterData converter)
    {
        Measured power = Power(hold.Rpm!, converter.CapacityFactor);
        double seconds = hold.DurationSeconds + (hold.Record.ApproachMilliseconds / 1000.0);
        if (converter.OilKilograms is not double oil)
        {
            return new StallHeat(hold.Gear, hold.StartSeconds, seconds, power.Value, power.Expanded, null, null, null);
        }

        double metal = converter.MetalKilograms ?? (oil * UsualMetal);
        double high = KelvinPerSecond(power.Value, oil, 0) * seconds;
        double low = KelvinPerSecond(power.Value, oil, metal) * seconds;
        double middle = (high + low) / 2;
        double expanded = new UncertaintyBudget().AddRectangular((high - low) / 2).Add(middle * power.Expanded / 2 / power.Value).Expanded;
        return new StallHeat(hold.Gear, hold.StartSeconds, seconds, power.Value, power.Expanded, middle, expanded, CoolingSeconds(oil, metal) * Math.Log(20));
    }
}
