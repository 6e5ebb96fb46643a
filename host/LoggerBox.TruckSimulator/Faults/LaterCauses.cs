using System.Collections.Generic;
using System.Diagnostics.CodeAnalysis;

namespace LoggerBox.TruckSimulator.Faults;

/// <summary>Causes that the judge knows by name and the truck cannot have yet.</summary>
internal static class LaterCauses
{
    private const string FullTruck = "0.3";

    private static readonly Dictionary<string, string> Releases = new()
    {
        ["engine-limited-by-control"] = FullTruck,
        ["governor-droop"] = FullTruck,
        ["work-relief-high"] = FullTruck,
        ["work-relief-low"] = FullTruck,
        ["work-hydraulics-loading"] = FullTruck,
        ["oil-low-or-aerated"] = FullTruck,
        ["strainer-restricted"] = FullTruck,
        ["modulator-harsh"] = FullTruck,
        ["modulator-low"] = FullTruck,
        ["inching-not-released"] = FullTruck,
        ["both-clutches-leak"] = FullTruck,
        ["forward-feed-open"] = FullTruck,
        ["reverse-feed-open"] = FullTruck,
        ["selector-not-engaged"] = FullTruck,
        ["drive-input-broken"] = FullTruck,
        ["converter-relief-closed"] = FullTruck,
        ["cooler-restricted"] = FullTruck,
        ["lube-plug-missing"] = FullTruck,
        ["pressure-lines-swapped"] = FullTruck,
        ["gear-tag-wrong"] = FullTruck,
        ["oil-cold"] = FullTruck,
        ["air-thin"] = FullTruck,
    };

    public static bool TryGetRelease(string code, [NotNullWhen(true)] out string? release) => Releases.TryGetValue(code, out release);
}
