using System;
using System.IO;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.DataSheets;

/// <summary>The sheets that are given as examples, and a table that was really printed.</summary>
public class ExampleSheetTests
{
    private static readonly string[] Files = Repository.ExampleSheets;

    public static TheoryData<string> Names => [.. Files.Select(path => Path.GetFileName(path)!)];

    [Theory]
    [MemberData(nameof(Names))]
    public void An_example_sheet_has_nothing_to_be_said_against(string name) =>
        Assert.Empty(DataSheetReader.Check(Path.Combine(Repository.Root, "examples", name)));

    [Fact]
    public void Three_examples_show_three_units_two_fuels_and_a_port_for_each_gear()
    {
        DataSheet[] sheets = [.. Files.Select(DataSheetReader.Read)];
        Assert.Equal(3, sheets.Select(sheet => sheet.Unit).Distinct().Count());
        DataSheet dual = Assert.Single(sheets, sheet => sheet.EngineByFuel.Count == 2);
        Assert.True(dual.ClutchPortPerGear);
        Assert.NotEqual(dual.EngineFor("LPG").StallForwardRpm, dual.EngineFor("petrol").StallForwardRpm);
        Assert.Equal([1000, 1500], dual.AtSpeed.Select(row => row.Rpm));
    }

    /// <summary>
    /// US Army TM 10-3930-627-34, table 7-1: main pressure is not flat over speed, the clutch stands 25 to 35 percent below it, and the
    /// converter's range overlaps the clutch's.
    /// </summary>
    [Fact]
    public void A_published_table_by_speed_is_held_as_printed_and_its_illegible_figure_is_not_judged()
    {
        string path = Path.Combine(Repository.Root, "tests", "Host.Tests", "DataSheets", "published-by-speed.toml");
        Assert.Empty(DataSheetReader.Check(path));
        DataSheet sheet = DataSheetReader.Read(path);
        Assert.Equal(PressureUnit.Psi, sheet.Unit);
        Assert.Equal([(20, 30), (58, 68), (110, 120)], sheet.AtSpeed.Select(row => (row.Main!.Min!.Value, row.Main.Max!.Value)));
        Assert.Equal([(15, 25), (50, 58), (77, 87)], sheet.AtSpeed.Select(row => (row.ClutchReverse!.Min!.Value, row.ClutchReverse.Max!.Value)));
        Assert.False(sheet.AtSpeed[2].Converter!.IsJudged);
        Assert.Equal(84, sheet.AtSpeed[2].Converter!.Nominal);
        Assert.True(sheet.Hold.For(Gear.Forward).Converter!.Max > sheet.Hold.For(Gear.Forward).Clutch!.Max);
    }
}
