using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>The data sheet of the invented truck, in psi.</summary>
internal static class TestSheet
{
    public static DataSheet Truck(bool withRunUp = false, bool clutchPortPerGear = false, Limit? oil = null, Limit? reliefDrop = null, Limit? idle = null, Limit? stallReverse = null, Limit? clutchDifference = null) => new()
    {
        FileName = "truck.toml",
        ClutchPortPerGear = clutchPortPerGear,
        OilCelsius = oil,
        DifferenceClutchForwardReverse = clutchDifference,
        Truck = "Invented truck",
        Source = "invented",
        Unit = PressureUnit.Psi,
        Engine = new EngineLimits(
            IdleRpm: idle ?? Between(690, 830),
            GovernedRpm: new Limit(2380, 2520, 2450, 1),
            ReliefDropRpm: reliefDrop ?? new Limit(90, 250, null, 1),
            StallForwardRpm: new Limit(1690, 1910, 1800, 1),
            StallReverseRpm: stallReverse ?? new Limit(1690, 1910, 1800, 1),
            RunUpSeconds: withRunUp ? new Limit(null, 1.4, null, 1) : null),
        Idle = new PressureLimits(
            new GearPressures(Between(37, 85)),
            new GearPressures(Between(37, 85), Between(33, 85)),
            new GearPressures(Between(37, 85), Between(33, 85))),
        Hold = new PressureLimits(
            new GearPressures(Between(129, 185), null, Between(18.4, 29)),
            new GearPressures(Between(129, 185), Between(124, 185), Between(18.4, 29)),
            new GearPressures(Between(129, 185), Between(124, 185), Between(18.4, 29))),
        EngagementSeconds = Between(0.35, 2.0),
    };

    public static Limit Between(double min, double max) => new(min, max, null, 1);

    public static Limit AtLeast(double min) => new(min, null, null, 1);
}
