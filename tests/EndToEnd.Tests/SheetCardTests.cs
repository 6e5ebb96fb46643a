using System;
using System.IO;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

public class SheetCardTests
{
    [Fact]
    public void Without_a_file_the_card_goes_to_the_terminal()
    {
        CommandResult result = LoggerBoxCommand.Run("sheet", "card", Recordings.Sheet("healthy")).Expect(0);
        Assert.Empty(result.Error);
        Assert.Contains("NEVER do the relief step", result.Out, StringComparison.Ordinal);
        Assert.Contains("WHEELS CLEAR", result.Out, StringComparison.Ordinal);
        Assert.Contains("StoP", result.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("card.html", "<!DOCTYPE html>")]
    [InlineData("card.pdf", "%PDF-")]
    public void The_file_is_what_its_ending_says(string name, string begins)
    {
        using var bench = new Workbench();
        string path = bench.At(name);
        LoggerBoxCommand.Run("sheet", "card", Recordings.Sheet("healthy"), "--out", path).Expect(0);
        Assert.StartsWith(begins, File.ReadAllText(path), StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_made_is_refused_and_nothing_is_written()
    {
        using var bench = new Workbench();
        string path = bench.At("card.png");
        LoggerBoxCommand.Run("sheet", "card", Recordings.Sheet("healthy"), "--out", path).Refused(2, "card.png", ".pdf");
        string bad = bench.Write("bad.toml", "[engine]\nidle_rpm = { min = 800, max = 600 }\n");
        string card = bench.At("card.pdf");
        LoggerBoxCommand.Run("sheet", "card", bad, "--out", card).Refused(1, "bad.toml", "line 2");
        Assert.False(File.Exists(path) || File.Exists(card));
    }
}
