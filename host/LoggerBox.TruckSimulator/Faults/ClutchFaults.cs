using System;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Faults;

internal static class ClutchFaults
{
    public static FittedTruck Forward(FittedTruck fitted, double severity, Func<ClutchParameters, double, ClutchParameters> wear) =>
        fitted with { Truck = fitted.Truck with { ForwardClutch = wear(fitted.Truck.ForwardClutch, severity) } };

    public static FittedTruck Reverse(FittedTruck fitted, double severity, Func<ClutchParameters, double, ClutchParameters> wear) =>
        fitted with { Truck = fitted.Truck with { ReverseClutch = wear(fitted.Truck.ReverseClutch, severity) } };

    /// <summary>Seal rings or piston: a hole as well as wider gaps.</summary>
    public static ClutchParameters Leak(ClutchParameters sound, double severity) => sound with
    {
        LeakArea = Flow.Area(1.2 + 1.6 * severity),
        SealGap = sound.SealGap * (1 + 2 * severity),
    };

    /// <summary>The selector's body or a gasket that both clutches share.</summary>
    public static FittedTruck Both(FittedTruck fitted, double severity, Func<ClutchParameters, double, ClutchParameters> wear) =>
        Reverse(Forward(fitted, severity, wear), severity, wear);

    /// <summary>The feed passage's plug is missing: more runs out than the valves let in.</summary>
    public static ClutchParameters FeedOpen(ClutchParameters sound, double severity) => sound with { LeakArea = Flow.Area(6 + 4 * severity) };

    /// <summary>Plates worn and glazed: less friction, and a longer stroke to fill.</summary>
    public static ClutchParameters Slip(ClutchParameters sound, double severity) => sound with
    {
        PlateFriction = sound.PlateFriction * (1 - 0.95 * severity),
        FillVolume = sound.FillVolume * (1 + 0.25 * severity),
    };
}
