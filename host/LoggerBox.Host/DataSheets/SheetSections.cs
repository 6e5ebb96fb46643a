using LoggerBox.Host.Units;

namespace LoggerBox.Host.DataSheets;

/// <summary>All sections of the file, in the order in which people write them.</summary>
internal static class SheetSections
{
    public static DataSheet Read(TableReader root, string fileName, string version)
    {
        TableReader? truck = root.Section("truck");
        string? name = truck?.Text("name");
        string? source = truck?.Text("source");
        string? drawnFrom = truck?.Text("drawn_from_jobs");
        truck?.RefuseTheRest();

        var engine = EngineSection.Read(root.Section("engine"));
        PressureSection pressure = PressureSection.Read(root.Section("pressure"));
        StallSection stall = StallSection.Read(root.Section("stall"));
        (double? altitude, double? air) = Site(root.Section("site"));
        (bool perGear, bool outlet) = Ports(root.Section("ports"));

        var sheet = new DataSheet
        {
            FileName = fileName,
            Version = version,
            Truck = name ?? "",
            Source = source ?? "",
            DrawnFromJobs = drawnFrom ?? "",
            Engine = engine.Engine,
            EngineByFuel = engine.ByFuel,
            Unit = pressure.GivenUnit ?? PressureUnit.Kilopascal,
            HoldRpm = pressure.HoldRpm ?? 2000,
            HoldWindowRpm = pressure.HoldWindowRpm ?? 75,
            Idle = pressure.Idle,
            Hold = pressure.Hold,
            Stall = pressure.Stall,
            AtSpeed = pressure.AtSpeed,
            EngagementSeconds = Single(root.Section("engagement"), "time_s", QuantityRange.Seconds),
            DifferenceClutchForwardReverse = Difference(root, pressure.GivenUnit),
            OilCelsius = Single(root.Section("oil"), "temperature_c", QuantityRange.Celsius),
            StallLimitSeconds = stall.LimitSeconds,
            StallCooldownSeconds = stall.CooldownSeconds,
            StallReverseAllowed = stall.ReverseAllowed ?? true,
            PickupPulsesPerRevolution = Pickup(root.Section("pickup")),
            SiteAltitudeMetres = altitude,
            SiteAirCelsius = air,
            Converter = ConverterSection.Read(root.Section("converter")),
            ClutchPortPerGear = perGear,
            ConverterPortAtOutlet = outlet,
        };
        root.RefuseTheRest();
        return sheet;
    }

    private static Limit? Single(TableReader? reader, string key, QuantityRange range)
    {
        Limit? limit = reader?.Limit(key, range);
        reader?.RefuseTheRest();
        return limit;
    }

    private static Limit? Difference(TableReader root, PressureUnit? unit)
    {
        TableReader? reader = root.Section("difference");
        if (reader is not null && root.Table.Find("pressure") is null)
        {
            reader.Findings.Error(reader.Table.Line, "[difference] needs a unit; add [pressure] with unit = \"psi\", \"kPa\", \"bar\" or \"kgfcm2\".");
        }

        PressureUnit assumed = unit ?? PressureUnit.Kilopascal;
        Limit? limit = reader?.Limit("clutch_forward_reverse", QuantityRange.PressureDifference(assumed), assumed);
        reader?.RefuseTheRest();
        return limit;
    }

    private static double? Pickup(TableReader? reader)
    {
        double? pulses = reader?.Number("pulses_per_rev", QuantityRange.PulsesPerRevolution);
        reader?.RefuseTheRest();
        return pulses;
    }

    private static (double? Altitude, double? Air) Site(TableReader? reader)
    {
        double? altitude = reader?.Number("altitude_m", QuantityRange.AltitudeMetres);
        double? air = reader?.Number("air_c", QuantityRange.Celsius with { Highest = 70 });
        reader?.RefuseTheRest();
        return (altitude, air);
    }

    private static (bool PerGear, bool Outlet) Ports(TableReader? reader)
    {
        bool perGear = reader?.Choice("clutch", "common", "per-gear") == "per-gear";
        bool outlet = reader?.Choice("converter", "in", "out") == "out";
        reader?.RefuseTheRest();
        return (perGear, outlet);
    }

    private sealed record StallSection(double? LimitSeconds, double? CooldownSeconds, bool? ReverseAllowed)
    {
        /// <summary>A stall beyond a minute boils oil whatever a sheet says: such a figure is a slip.</summary>
        private static readonly QuantityRange StallSeconds = new("seconds", 1, 60);

        public static StallSection Read(TableReader? reader)
        {
            var section = new StallSection(
                reader?.Number("limit_s", StallSeconds), reader?.Number("cooldown_s", QuantityRange.Seconds), reader?.Flag("reverse_allowed"));
            reader?.RefuseTheRest();
            return section;
        }
    }
}
