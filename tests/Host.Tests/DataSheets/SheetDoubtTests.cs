using System;
using System.Linq;
using LoggerBox.Host.DataSheets;
using Xunit;

namespace LoggerBox.Host.Tests.DataSheets;

/// <summary>Figures that a sheet may hold and hardly means are told by `sheet check`; slips of TOML say what to write instead.</summary>
public class SheetDoubtTests
{
    private const string Head = "[truck]\nname = \"Invented\"\nsource = \"invented\"\n";

    // 180 to 200 °F are 82 to 93 °C (arithmetic), a published window.
    [Theory]
    [InlineData("[oil]\ntemperature_c = { min = 180, max = 200 }", 5, "180 to 200 °C: that reads like °F, which would be 82 to 93 °C")]
    [InlineData("[oil]\ntemperature_c = { min = 160, max = 190 }", 5, "71 to 88 °C")]
    [InlineData("[engine]\nidle_rpm = { min = 66, max = 78 }", 5, "66 to 78 rpm: no engine idles there")]
    [InlineData("[engine]\nidle_rpm = { min = 6600, max = 7800 }", 5, "no engine idles there")]
    [InlineData("[engine]\nidle_rpm = { min = 690, max = 830 }\ngoverned_rpm = { min = 700, max = 780 }", 5, "idle is above governed speed")]
    [InlineData("[engine.LPG]\nidle_rpm = { min = 66, max = 78 }\n[engine.petrol]\nidle_rpm = { min = 690, max = 780 }", 5, "no engine idles there")]
    public void A_figure_that_is_hardly_meant_is_a_warning_and_no_refusal(string text, int line, string expected)
    {
        SheetFinding finding = Assert.Single(DataSheetReader.CheckText(Head + text, "a.toml"), finding => finding.Line == line);
        Assert.Equal(FindingLevel.Warning, finding.Level);
        Assert.Contains(expected, finding.Text, StringComparison.Ordinal);
        Assert.NotNull(DataSheetReader.Parse(Head + text, "a.toml"));
    }

    [Theory]
    [InlineData("[oil]\ntemperature_c = { min = 82, max = 93 }")]
    [InlineData("[oil]\ntemperature_c = { min = 27, max = 38 }")]
    [InlineData("[engine]\nidle_rpm = { min = 640, max = 760 }\ngoverned_rpm = { nominal = 2450, tolerance = 60 }")]
    [InlineData("[engine]\nidle_rpm = { reference = 700 }")]
    public void Usual_figures_are_none(string text) => Assert.Empty(DataSheetReader.CheckText(Head + text, "a.toml"));

    [Theory]
    [InlineData("[pressure]\nunit = \"psi\"\n[pressure.hold]\nconverter = { min = 20,5 }", 7, "write 20.5 instead of 20,5")]
    [InlineData("[pressure]\nunit = \"psi\"\n[pressure.hold]\nwindow_rpm = 75,5", 7, "write 75.5 instead of 75,5")]
    [InlineData("[engine]\nfuel = \"LPG\nidle_rpm = { min = 640 }", 5, "write fuel = \"LPG\".")]
    public void A_slip_says_what_to_write_instead(string text, int line, string expected)
    {
        SheetFinding finding = DataSheetReader.CheckText(Head + text, "a.toml").First(finding => finding.Level == FindingLevel.Error);
        Assert.Equal(line, finding.Line);
        Assert.Contains("not valid TOML", finding.Text, StringComparison.Ordinal);
        Assert.Contains(expected, finding.Text, StringComparison.Ordinal);
    }
}
