using System;
using System.Collections.Generic;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.DataSheets;

/// <summary>What the truck's service manual says, as the shop typed it in. Null is "not given": recorded, not judged.</summary>
public sealed class DataSheet
{
    /// <summary>The file's name without folder.</summary>
    public required string FileName { get; init; }

    /// <summary>The beginning of the text's SHA-256: two sheets of one name with different figures are two versions. Empty for a sheet that is no file.</summary>
    public string Version { get; init; } = "";

    public string Truck { get; init; } = "";

    public string Source { get; init; } = "";

    /// <summary>The shop's own jobs that the limits were drawn from; empty where they are a manual's.</summary>
    public string DrawnFromJobs { get; init; } = "";

    /// <summary>The engine's figures that do not depend on the fuel, or those of the fuel that the sheet names.</summary>
    public EngineLimits Engine { get; init; } = new();

    /// <summary>[engine.FUEL] tables of a dual-fuel truck by the fuel's name as written; each already completed from [engine].</summary>
    public IReadOnlyDictionary<string, EngineLimits> EngineByFuel { get; init; } = new Dictionary<string, EngineLimits>();

    /// <summary>The figures for a fuel as the job names it (capitals do not matter); null or a sheet without tables by fuel: the sheet's own.</summary>
    /// <exception cref="UserErrorException">The sheet has tables by fuel, and none for this one.</exception>
    public EngineLimits EngineFor(string? fuel)
    {
        if (string.IsNullOrWhiteSpace(fuel) || EngineByFuel.Count == 0)
        {
            return Engine;
        }

        foreach ((string name, EngineLimits limits) in EngineByFuel)
        {
            if (string.Equals(name, fuel.Trim(), StringComparison.OrdinalIgnoreCase))
            {
                return limits;
            }
        }

        throw new UserErrorException(
            $"{FileName} has no table [engine.{fuel.Trim()}]; it knows {string.Join(", ", EngineByFuel.Keys)}. Correct the fuel on the job, or add the table.");
    }

    public PressureUnit Unit { get; init; } = PressureUnit.Kilopascal;

    /// <summary>Speed and window of the hold steps, rpm.</summary>
    public double HoldRpm { get; init; } = 2000;

    public double HoldWindowRpm { get; init; } = 75;

    /// <summary>Engine idling, at the hold speed, in stall: by gear, overrides already applied.</summary>
    public PressureLimits Idle { get; init; } = new();

    public PressureLimits Hold { get; init; } = new();

    public PressureLimits Stall { get; init; } = new();

    /// <summary>[[pressure.at]] rows in order of speed.</summary>
    public IReadOnlyList<PressuresAtSpeed> AtSpeed { get; init; } = [];

    public Limit? EngagementSeconds { get; init; }

    public Limit? DifferenceClutchForwardReverse { get; init; }

    public Limit? OilCelsius { get; init; }

    public double? StallLimitSeconds { get; init; }

    public double? StallCooldownSeconds { get; init; }

    public bool StallReverseAllowed { get; init; } = true;

    public double? PickupPulsesPerRevolution { get; init; }

    public double? SiteAltitudeMetres { get; init; }

    public double? SiteAirCelsius { get; init; }

    public ConverterData? Converter { get; init; }

    /// <summary>One gauge port per clutch: the hose is moved between forward and reverse.</summary>
    public bool ClutchPortPerGear { get; init; }

    /// <summary>The converter gauge sits at its outlet instead of its inlet.</summary>
    public bool ConverterPortAtOutlet { get; init; }
}

/// <summary>[engine]; speeds in rpm, times in seconds.</summary>
public sealed record EngineLimits(
    string? Fuel = null,
    Limit? IdleRpm = null,
    Limit? GovernedRpm = null,
    Limit? ReliefDropRpm = null,
    Limit? StallForwardRpm = null,
    Limit? StallReverseRpm = null,
    Limit? RunUpSeconds = null);

/// <summary>[pressure.idle], [pressure.hold] or [pressure.stall] with its gear overrides applied.</summary>
public sealed record PressureLimits(GearPressures? Neutral = null, GearPressures? Forward = null, GearPressures? Reverse = null)
{
    public GearPressures For(Gear gear) => gear switch
    {
        Gear.Neutral => Neutral ?? new GearPressures(),
        Gear.Forward => Forward ?? new GearPressures(),
        Gear.Reverse => Reverse ?? new GearPressures(),
        _ => new GearPressures(),
    };
}

/// <summary>Limits of the three pressures in one gear, in <see cref="DataSheet.Unit"/>. In neutral Clutch is null (it stands at nothing) unless the sheet's neutral table gives one.</summary>
public sealed record GearPressures(Limit? Main = null, Limit? Clutch = null, Limit? Converter = null);

/// <summary>One [[pressure.at]] row.</summary>
public sealed record PressuresAtSpeed(double Rpm, Limit? Main, Limit? ClutchForward, Limit? ClutchReverse, Limit? Converter);
