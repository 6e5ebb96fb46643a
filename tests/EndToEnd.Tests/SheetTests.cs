using System;
using System.Linq;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

public class SheetTests
{
    [Fact]
    public void A_sound_sheet_is_said_to_be_sound()
    {
        CommandResult result = LoggerBoxCommand.Run("sheet", "check", Recordings.Sheet("healthy")).Expect(0);
        Assert.Contains("healthy.sheet.toml", result.Out, StringComparison.Ordinal);
        Assert.Empty(result.Error);
    }

    [Fact]
    public void Every_faulty_line_is_listed_and_the_first_is_in_the_refusal()
    {
        using var bench = new Workbench();
        string sheet = bench.Write("bad.toml", "[truck]\nname = \"t\"\n[engine]\nidle_rpm = { min = 800, max = 600 }\ncolour = 1\ngoverned_rpm = { nominal = 2450 }\n");
        CommandResult result = LoggerBoxCommand.Run("sheet", "check", sheet);
        result.Refused(1, "bad.toml", "line 4");
        Assert.Equal([4, 5, 6], result.Out.TrimEnd('\n').Split('\n').Select(line => int.Parse(line.Split("line ")[1].Split(':')[0])));
    }

    [Theory]
    [InlineData("unknown key", "[truck]\nname = \"t\"\nwheels = 4\n", 3)]
    [InlineData("nominal without tolerance", "[engine]\n\ngoverned_rpm = { nominal = 2450 }\n", 3)]
    [InlineData("min above max", "[engine]\nidle_rpm = { min = 800, max = 600 }\n", 2)]
    [InlineData("NaN", "[engine]\nidle_rpm = { min = nan, max = 600 }\n", 2)]
    [InlineData("text for a number", "[engine]\nidle_rpm = { min = \"low\", max = 600 }\n", 2)]
    [InlineData("empty file", "", 1)]
    [InlineData("two units that disagree", "[pressure]\nunit = \"kPa\"\n[pressure.hold]\nmain = { min = 940, max = 1240, also = { unit = \"psi\", min = 136, max = 190 } }\n", 4)]
    public void A_sheet_that_cannot_be_is_refused_by_file_and_line_and_judges_nothing(string what, string text, int line)
    {
        using var bench = new Workbench();
        string sheet = bench.Write("bad.toml", text);
        LoggerBoxCommand.Run("sheet", "check", sheet).Refused(1, "bad.toml", $"line {line}");
        CommandResult judged = LoggerBoxCommand.Run("judge", Recordings.Trace("healthy"), "--sheet", sheet);
        judged.Refused(1, "bad.toml", $"line {line}");
        Assert.True(judged.Out.Length == 0, what);
    }
}
