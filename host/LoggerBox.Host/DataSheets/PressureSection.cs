using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.DataSheets;

/// <summary>[pressure]: unit, the three conditions with their gear overrides, and the rows by speed.</summary>
internal sealed class PressureSection
{
    public PressureUnit? GivenUnit { get; private init; }

    public double? HoldRpm { get; private init; }

    public double? HoldWindowRpm { get; private init; }

    public PressureLimits Idle { get; private init; } = new();

    public PressureLimits Hold { get; private init; } = new();

    public PressureLimits Stall { get; private init; } = new();

    public IReadOnlyList<PressuresAtSpeed> AtSpeed { get; private init; } = [];

    public static PressureSection Read(TableReader? reader)
    {
        if (reader is null)
        {
            return new PressureSection();
        }

        PressureUnit? unit = Unit(reader);
        if (reader.Table.Find("unit") is null)
        {
            reader.Findings.Error(reader.Table.Line, "[pressure] has no unit; add unit = \"psi\", \"kPa\", \"bar\" or \"kgfcm2\", as the manual prints it.");
        }

        PressureUnit assumed = unit ?? PressureUnit.Kilopascal;
        TableReader? hold = reader.Section("hold");
        var section = new PressureSection
        {
            GivenUnit = unit,
            HoldRpm = hold?.Number("rpm", QuantityRange.Rpm with { Lowest = 100 }),
            HoldWindowRpm = hold?.Number("window_rpm", new QuantityRange("rpm", 1, 1000)),
            Idle = Condition(reader.Section("idle"), assumed, neutral: true),
            Hold = Condition(hold, assumed, neutral: true),
            Stall = Condition(reader.Section("stall"), assumed, neutral: false),
            AtSpeed = SpeedRows(reader, assumed),
        };
        reader.RefuseTheRest();
        return section;
    }

    public static PressureUnit? Unit(TableReader reader)
    {
        string? code = reader.Text("unit");
        if (code is null)
        {
            return null;
        }

        if (PressureUnits.TryParse(code, out PressureUnit unit))
        {
            return unit;
        }

        reader.Refuse(reader.Table.Find("unit")!, $"is \"{Excerpt.Of(code)}\"; write \"psi\", \"kPa\", \"bar\" or \"kgfcm2\".");
        return null;
    }

    /// <param name="neutral">A stall has no neutral.</param>
    private static PressureLimits Condition(TableReader? reader, PressureUnit unit, bool neutral)
    {
        if (reader is null)
        {
            return new PressureLimits();
        }

        GearPressures general = Pressures(reader, unit);
        var limits = new PressureLimits(
            neutral ? Override(reader.Section("neutral"), general with { Clutch = null }, unit) : null,
            Override(reader.Section("forward"), general, unit),
            Override(reader.Section("reverse"), general, unit));
        reader.RefuseTheRest();
        return limits;
    }

    private static GearPressures Override(TableReader? reader, GearPressures general, PressureUnit unit)
    {
        if (reader is null)
        {
            return general;
        }

        GearPressures own = Pressures(reader, unit);
        reader.RefuseTheRest();
        return new GearPressures(own.Main ?? general.Main, own.Clutch ?? general.Clutch, own.Converter ?? general.Converter);
    }

    private static GearPressures Pressures(TableReader reader, PressureUnit unit)
    {
        QuantityRange range = QuantityRange.Pressure(unit);
        return new GearPressures(reader.Limit("main", range, unit), reader.Limit("clutch", range, unit), reader.Limit("converter", range, unit));
    }

    private static List<PressuresAtSpeed> SpeedRows(TableReader reader, PressureUnit unit)
    {
        QuantityRange range = QuantityRange.Pressure(unit);
        var rows = new List<PressuresAtSpeed>();
        foreach (TableReader row in reader.Rows("at"))
        {
            double? rpm = row.Number("rpm", QuantityRange.Rpm with { Lowest = 100 });
            if (row.Table.Find("rpm") is null)
            {
                row.Findings.Error(row.Table.Line, "[[pressure.at]] has no rpm; add the speed that this row is for.");
            }

            (Limit? forward, Limit? reverse) = Clutches(row, range, unit);
            Limit? main = row.Limit("main", range, unit);
            Limit? converter = row.Limit("converter", range, unit);
            row.RefuseTheRest();
            if (rpm is double speed && rows.Exists(other => other.Rpm == speed))
            {
                row.Findings.Error(row.Table.Line, $"[[pressure.at]] has two rows for {TableReader.Show(speed)} rpm; put their limits into one.");
            }

            rows.Add(new PressuresAtSpeed(rpm ?? 0, main, forward, reverse, converter));
        }

        return [.. rows.OrderBy(row => row.Rpm)];
    }

    /// <summary>clutch = { ... } for both, or clutch.forward and clutch.reverse.</summary>
    private static (Limit? Forward, Limit? Reverse) Clutches(TableReader row, QuantityRange range, PressureUnit unit)
    {
        bool apart = row.Table.Find("clutch")?.Value is SheetTable table && (table.Find("forward") ?? table.Find("reverse")) is not null;
        if (!apart)
        {
            Limit? both = row.Limit("clutch", range, unit);
            return (both, both);
        }

        TableReader clutch = row.Section("clutch")!;
        var pair = (clutch.Limit("forward", range, unit), clutch.Limit("reverse", range, unit));
        clutch.RefuseTheRest();
        return pair;
    }
}
