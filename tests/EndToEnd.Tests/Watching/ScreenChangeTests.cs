using System;
using System.Linq;
using System.Text.RegularExpressions;
using LoggerBox.App.Watching.Screen;
using Xunit;

namespace LoggerBox.EndToEnd.Tests.Watching;

public class ScreenChangeTests
{
    [Fact]
    public void Nothing_is_sent_for_a_frame_that_is_the_same() =>
        Assert.Equal("", ScreenChange.Between(["one", "two"], ["one", "two"]));

    [Fact]
    public void Only_the_place_that_differs_is_sent() =>
        Assert.Equal("\e[2;8H1", ScreenChange.Between(["same", "speed 700 rpm"], ["same", "speed 710 rpm"]));

    [Fact]
    public void Places_that_lie_close_go_together_and_a_line_that_gets_shorter_is_wiped()
    {
        Assert.Equal("\e[1;1Hbxb", ScreenChange.Between(["axa"], ["bxb"]));
        Assert.Equal("\e[1;1H1\e[1;10H2", ScreenChange.Between(["0        0"], ["1        2"]));
        Assert.Equal("\e[1;3H   ", ScreenChange.Between(["a bcd"], ["a"]));
    }

    /// <summary>ECMA-48, 8.3.21: CUP moves to line and column, both from 1.</summary>
    [Fact]
    public void A_screen_that_got_the_change_shows_the_next_frame()
    {
        var random = new Random(1);
        string[] before = [];
        for (int frame = 0; frame < 200; frame++)
        {
            string[] after = [.. Enumerable.Range(0, 6).Select(_ => new string([.. Enumerable.Range(0, random.Next(40)).Select(_ => "  #a"[random.Next(4)])]).TrimEnd())];
            Assert.Equal(after, Screen(before, ScreenChange.Between(before, after)));
            before = after;
        }
    }

    private static string[] Screen(string[] shown, string sent)
    {
        char[][] cells = [.. Enumerable.Range(0, 6).Select(row => (row < shown.Length ? shown[row] : "").PadRight(40).ToCharArray())];
        foreach (Match run in Regex.Matches(sent, @"\e\[(\d+);(\d+)H([^\e]*)"))
        {
            run.Groups[3].Value.CopyTo(cells[int.Parse(run.Groups[1].Value) - 1].AsSpan(int.Parse(run.Groups[2].Value) - 1));
        }

        return [.. cells.Select(row => new string(row).TrimEnd())];
    }
}
