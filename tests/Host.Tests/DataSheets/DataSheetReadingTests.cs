using System;
using System.IO;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.DataSheets;

public class DataSheetReadingTests
{
    private readonly DataSheet sheet = DataSheetReader.Parse(SampleSheet.Full, "sample.toml");

    [Fact]
    public void Every_plain_value_arrives()
    {
        Assert.Equal(("sample.toml", "Sample truck", "invented, typed by A, checked by B"), (sheet.FileName, sheet.Truck, sheet.Source));
        Assert.Equal((PressureUnit.Kilopascal, 1800.0, 60.0), (sheet.Unit, sheet.HoldRpm, sheet.HoldWindowRpm));
        Assert.Equal((5.0, 90.0, false), (sheet.StallLimitSeconds, sheet.StallCooldownSeconds, sheet.StallReverseAllowed));
        Assert.Equal((0.5, 420.0, 18.5), (sheet.PickupPulsesPerRevolution, sheet.SiteAltitudeMetres, sheet.SiteAirCelsius));
        Assert.True(sheet.ClutchPortPerGear);
        Assert.True(sheet.ConverterPortAtOutlet);
        Assert.Equal((0.35, 2.0), (sheet.EngagementSeconds!.Min, sheet.EngagementSeconds.Max));
        Assert.Equal((null, 5.0), (sheet.DifferenceClutchForwardReverse!.Min, sheet.DifferenceClutchForwardReverse.Max));
        Assert.Equal((71.0, 93.0), (sheet.OilCelsius!.Min, sheet.OilCelsius.Max));
    }

    [Fact]
    public void Each_form_of_a_limit_gives_its_bounds_its_line_and_what_was_printed()
    {
        AssertLimit(sheet.Engine.IdleRpm, 640, 760, null, "640 to 760", 7);
        AssertLimit(sheet.Engine.GovernedRpm, 2390, 2510, 2450, "2450 ± 60", 8);
        AssertLimit(sheet.Engine.StallForwardRpm, 1840, 2080, 1940, "1940 +140 -100", 10);
        AssertLimit(sheet.Engine.StallReverseRpm, 1805, 1995, 1900, "1900 ± 5 %", 14);
        AssertLimit(sheet.Engine.RunUpSeconds, null, 1.4, null, "at most 1.4", 11);
        AssertLimit(sheet.Hold.For(Gear.Reverse).Converter, 150, null, null, "at least 150", 29);
        AssertLimit(sheet.Hold.For(Gear.Neutral).Converter, null, null, 400, "400 (reference)", 33);
        Assert.False(sheet.Hold.For(Gear.Neutral).Converter!.IsJudged);
        Assert.Equal("136 to 180 psi", sheet.Hold.For(Gear.Forward).Main!.PrintedAlso);
    }

    [Fact]
    public void A_gear_table_overrides_only_what_it_names()
    {
        Assert.Equal(910, sheet.Hold.For(Gear.Forward).Clutch!.Min);
        Assert.Equal(900, sheet.Hold.For(Gear.Reverse).Clutch!.Min);
        Assert.Equal(940, sheet.Hold.For(Gear.Forward).Main!.Min);
        Assert.Equal((1300.0, 1400.0), (sheet.Stall.For(Gear.Forward).Main!.Max, sheet.Stall.For(Gear.Reverse).Main!.Max));
    }

    [Fact]
    public void Neutral_has_no_clutch_limit_of_the_gears_and_stall_no_neutral()
    {
        Assert.Null(sheet.Idle.For(Gear.Neutral).Clutch);
        Assert.Equal(180, sheet.Idle.For(Gear.Forward).Clutch!.Min);
        Assert.Null(sheet.Stall.For(Gear.Neutral).Main);
    }

    [Fact]
    public void Rows_by_speed_come_in_order_with_the_clutches_apart_or_together()
    {
        Assert.Equal([1000.0, 1500.0], sheet.AtSpeed.Select(row => row.Rpm));
        Assert.Equal((700.0, 690.0), (sheet.AtSpeed[0].ClutchForward!.Min, sheet.AtSpeed[0].ClutchReverse!.Min));
        Assert.Equal((850.0, 850.0), (sheet.AtSpeed[1].ClutchForward!.Min, sheet.AtSpeed[1].ClutchReverse!.Min));
        Assert.Null(sheet.AtSpeed[0].Main);
    }

    [Fact]
    public void A_fuel_table_is_completed_from_the_engine_table()
    {
        Assert.Equal(2500, sheet.EngineFor("Petrol").GovernedRpm!.Nominal);
        Assert.Equal(640, sheet.EngineFor("petrol").IdleRpm!.Min);
        Assert.Equal(1940, sheet.EngineFor("petrol").StallReverseRpm!.Nominal);
        Assert.Equal("LPG", sheet.EngineFor(null).Fuel);
        var error = Assert.Throws<UserErrorException>(() => sheet.EngineFor("diesel"));
        Assert.Contains("[engine.diesel]", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_of_two_lines_is_enough()
    {
        DataSheet small = DataSheetReader.Parse("[truck]\nname = \"x\"\n", "s.toml");
        Assert.Equal((2000.0, 75.0, true), (small.HoldRpm, small.HoldWindowRpm, small.StallReverseAllowed));
        Assert.Null(small.Engine.IdleRpm);
        Assert.Null(small.Hold.For(Gear.Forward).Main);
    }

    [Fact]
    public void A_file_with_byte_order_mark_and_carriage_returns_reads_the_same()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("dos.toml");
        File.WriteAllText(path, "\uFEFF" + SampleSheet.Full.Replace("\n", "\r\n", StringComparison.Ordinal));
        Assert.Equal(29, DataSheetReader.Read(path).Hold.For(Gear.Forward).Converter!.Line);
        Assert.Empty(DataSheetReader.Check(path));
    }

    private static void AssertLimit(Limit? limit, double? min, double? max, double? nominal, string printed, int line)
    {
        Assert.NotNull(limit);
        Assert.Equal((min, max, nominal, printed, line), (limit.Min, limit.Max, limit.Nominal, limit.Printed, limit.Line));
    }
}
