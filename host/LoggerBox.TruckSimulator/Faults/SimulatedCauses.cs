using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Faults;

/// <summary>The causes that this release can put into the truck, and when the others come.</summary>
public static class SimulatedCauses
{
    public const string Healthy = "healthy";

    public static IReadOnlyList<SimulatedCause> All { get; } =
    [
        new(Healthy, 0, (truck, _, _) => truck),
        new("engine-power-low", 0.48, EngineFaults.PowerLow),
        new("governor-low", 0.6, EngineFaults.GovernorLow),
        new("governor-high", 0.6, EngineFaults.GovernorHigh),
        new("pump-worn", 0.6, PressureFaults.PumpWorn),
        new("regulator-low", 0.6, PressureFaults.RegulatorLow),
        new("regulator-high", 0.7, PressureFaults.RegulatorHigh),
        new("forward-clutch-leak", 0.6, (fitted, severity, _) => ClutchFaults.Forward(fitted, severity, ClutchFaults.Leak)),
        new("reverse-clutch-leak", 0.6, (fitted, severity, _) => ClutchFaults.Reverse(fitted, severity, ClutchFaults.Leak)),
        new("forward-clutch-slip", 0.76, (fitted, severity, _) => ClutchFaults.Forward(fitted, severity, ClutchFaults.Slip)),
        new("reverse-clutch-slip", 0.76, (fitted, severity, _) => ClutchFaults.Reverse(fitted, severity, ClutchFaults.Slip)),
        new("stator-slipping", 0.6, ConverterFaults.StatorSlipping),
        new("modulator-slow", 0.6, PressureFaults.ModulatorSlow),
        new("converter-relief-open", 0.5, PressureFaults.ConverterReliefOpen),
        new("pickup-scale", 1, InstrumentFaults.PickupScale),
        new("pressure-zero-shift", 1, InstrumentFaults.PressureZeroShift),
    ];

    public static bool TryGet(string code, [NotNullWhen(true)] out SimulatedCause? cause)
    {
        foreach (SimulatedCause candidate in All)
        {
            if (candidate.Code == code)
            {
                cause = candidate;
                return true;
            }
        }

        cause = null;
        return false;
    }

    /// <summary>The release that will bring a cause which exists but cannot be put into the truck yet.</summary>
    public static bool TryGetRelease(string code, [NotNullWhen(true)] out string? release) => LaterCauses.TryGetRelease(code, out release);
}
