using System;
using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Faults;

/// <summary>The causes that can be put into the truck: every one that the judge knows.</summary>
public static class SimulatedCauses
{
    public const string Healthy = "healthy";

    /// <summary>Severities are such that the sample truck's readings leave its limits clearly.</summary>
    public static IReadOnlyList<SimulatedCause> All { get; } =
    [
        new(Healthy, 0, (truck, _, _) => truck),
        new("engine-power-low", 0.48, EngineFaults.PowerLow),
        new("engine-limited-by-control", 0.5, EngineFaults.LimitedByControl),
        new("governor-low", 0.6, EngineFaults.GovernorLow),
        new("governor-high", 0.6, EngineFaults.GovernorHigh),
        new("governor-droop", 0.6, EngineFaults.GovernorDroop),
        new("work-relief-high", 1, WorkFaults.ReliefHigh),
        new("work-relief-low", 0.82, WorkFaults.ReliefLow),
        new("work-hydraulics-loading", 0.9, WorkFaults.Loading),
        new("oil-low-or-aerated", 0.6, PressureFaults.OilAerated),
        new("strainer-restricted", 0.6, PressureFaults.StrainerRestricted),
        new("pump-worn", 0.6, PressureFaults.PumpWorn),
        new("regulator-low", 0.6, PressureFaults.RegulatorLow),
        new("regulator-high", 0.7, PressureFaults.RegulatorHigh),
        new("modulator-slow", 0.6, PressureFaults.ModulatorSlow),
        new("modulator-harsh", 0.9, PressureFaults.ModulatorHarsh),
        new("modulator-low", 0.6, PressureFaults.ModulatorLow),
        new("inching-not-released", 0.6, PressureFaults.InchingNotReleased),
        new("forward-clutch-leak", 0.6, (fitted, severity, _) => ClutchFaults.Forward(fitted, severity, ClutchFaults.Leak)),
        new("reverse-clutch-leak", 0.6, (fitted, severity, _) => ClutchFaults.Reverse(fitted, severity, ClutchFaults.Leak)),
        new("both-clutches-leak", 0.6, (fitted, severity, _) => ClutchFaults.Both(fitted, severity, ClutchFaults.Leak)),
        new("forward-feed-open", 0.6, (fitted, severity, _) => ClutchFaults.Forward(fitted, severity, ClutchFaults.FeedOpen)) { IsAllOrNothing = true },
        new("reverse-feed-open", 0.6, (fitted, severity, _) => ClutchFaults.Reverse(fitted, severity, ClutchFaults.FeedOpen)) { IsAllOrNothing = true },
        new("forward-clutch-slip", 0.76, (fitted, severity, _) => ClutchFaults.Forward(fitted, severity, ClutchFaults.Slip)),
        new("reverse-clutch-slip", 0.76, (fitted, severity, _) => ClutchFaults.Reverse(fitted, severity, ClutchFaults.Slip)),
        new("selector-not-engaged", 1, PressureFaults.SelectorNotEngaged) { IsAllOrNothing = true },
        new("drive-input-broken", 0.9, ConverterFaults.DriveInputBroken) { IsAllOrNothing = true },
        new("stator-slipping", 0.6, ConverterFaults.StatorSlipping),
        new("converter-relief-open", 0.5, PressureFaults.ConverterReliefOpen),
        new("converter-relief-closed", 0.6, PressureFaults.ConverterReliefClosed),
        new("cooler-restricted", 0.7, PressureFaults.CoolerRestricted),
        new("lube-plug-missing", 0.5, PressureFaults.LubePlugMissing),
        new("pickup-scale", 1, InstrumentFaults.PickupScale) { IsAllOrNothing = true },
        new("pressure-zero-shift", 1, InstrumentFaults.PressureZeroShift),
        new("pressure-lines-swapped", 1, InstrumentFaults.PressureLinesSwapped) { IsAllOrNothing = true },
        new("gear-tag-wrong", 1, InstrumentFaults.GearTagWrong) { IsAllOrNothing = true },
        new("oil-cold", 0.7, InstrumentFaults.OilCold),
        new("air-thin", 0.8, EngineFaults.AirThin),
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
}
