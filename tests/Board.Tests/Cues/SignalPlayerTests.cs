using LoggerBox.BoardParts.Cues;
using LoggerBox.Protocol.Cues;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Board.Tests.Cues;

public class SignalPlayerTests
{
    [Fact]
    public void A_cue_plays_its_pattern_and_gives_the_display_back()
    {
        SignalPlayer player = new() { Readout = " 700" };
        player.Give(Cue.Captured, 0, 0);
        player.Step(50000);
        Assert.Equal(("donE", true, true), (player.Text, player.SounderOn, player.LampOn));
        player.Step(1050000);
        Assert.Equal(("donE", false, false), (player.Text, player.SounderOn, player.LampOn));
        player.Step(2050000);
        Assert.Equal((" 700", Cue.None), (player.Text, player.Playing));
    }

    [Fact]
    public void Let_go_interrupts_captured_and_what_is_less_urgent_waits()
    {
        SignalPlayer player = new();
        player.Give(Cue.Captured, 0, 0);
        player.Give(Cue.StallStop, 0, 100000);
        player.Give(Cue.EngagementCaptured, 0, 200000);
        player.Step(300000);
        Assert.Equal(("StoP", Cue.StallStop), (player.Text, player.Playing));
        player.EndStallAlarms();
        player.Step(400000);
        Assert.Equal(Cue.EngagementCaptured, player.Playing);
    }

    [Fact]
    public void Let_go_sounds_until_the_pedal_is_let_go()
    {
        SignalPlayer player = new();
        player.Give(Cue.StallStop, 0, 0);
        for (long now = 0; now < 20000000; now += 100000)
        {
            player.Step(now);
            Assert.True(player.SounderOn);
        }

        player.EndStallAlarms();
        player.Step(20000000);
        Assert.False(player.SounderOn);
    }

    [Theory]
    [InlineData(3, "n  3")]
    [InlineData(11, "n 11")]
    [InlineData(0, "n  0")]
    [InlineData(1234, "n999")]
    public void The_display_counts_what_is_missing(int number, string text)
    {
        SignalPlayer player = new();
        player.Give(Cue.StepsMissing, number, 0);
        player.Step(1);
        Assert.Equal(text, player.Text);
    }

    [Theory]
    [InlineData(2450, "2450")]
    [InlineData(0, "   0")]
    [InlineData(-1, "----")]
    [InlineData(10000, "9999")]
    public void A_number_stands_to_the_right(int number, string text) => Assert.Equal(text, DisplayWords.Number(number, 4));
}
