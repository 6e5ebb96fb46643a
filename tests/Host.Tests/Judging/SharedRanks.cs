using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>Causes that the readings cannot tell apart share a rank, however common they are.</summary>
public sealed class SharedRanks
{
    private static readonly Step[] Everywhere = [Step.IdleNeutral, Step.HoldNeutral, Step.HoldForward, Step.HoldReverse];

    // Converter low, main as it should be: to part them the trade compares converter inlet and outlet, lubrication pressure, and main
    // at idle. Common practice, no source.
    [Fact]
    public void Open_relief_open_drilling_and_worn_pump_share_the_first_rank_while_main_stands()
    {
        var judgement = Judged.Of(new TestSession().Scale(Channel.Converter, 0.4, Everywhere));
        Assert.Equal(["converter-relief-open", "lube-plug-missing", "pump-worn"], Judged.First(judgement).Order());
    }

    [Fact]
    public void Main_and_converter_that_fall_at_idle_part_the_pump_from_them()
    {
        var session = new TestSession().Scale(Channel.Converter, 0.5, Everywhere).Scale(Channel.Converter, 0.3, Step.IdleNeutral)
            .Scale(Channel.Main, 0.45, Step.IdleNeutral, Step.IdleForward, Step.IdleReverse)
            .Scale(Channel.Clutch, 0.45, Step.IdleForward, Step.IdleReverse);
        Assert.Equal("pump-worn", Judged.First(Judged.Of(session))[0]);
        Assert.DoesNotContain("converter-relief-open", Judged.First(Judged.Of(session)));
    }

    /// <summary>Cheapest next check of this group: converter inlet against outlet, main at idle against the sheet (common practice, no source).</summary>
    [Fact]
    public void Main_a_little_low_at_idle_in_gear_does_not_part_them()
    {
        var session = new TestSession().Scale(Channel.Converter, 0.3, Everywhere)
            .Scale(Channel.Main, 0.58, Step.IdleNeutral).Scale(Channel.Main, 0.55, Step.IdleForward, Step.IdleReverse)
            .Scale(Channel.Clutch, 0.55, Step.IdleForward, Step.IdleReverse);
        string[] first = [.. Judged.First(Judged.Of(session))];
        Assert.Contains("converter-relief-open", first);
        Assert.Contains("lube-plug-missing", first);
        Assert.Contains("pump-worn", first);
    }

    [Fact]
    public void Low_pressure_accuses_where_the_speed_was_not_measured()
    {
        var judgement = Judged.Of(new TestSession().Scale(Channel.Converter, 0.4, Everywhere).Without(Channel.Speed));
        Assert.Contains(judgement.Checks, check => check is { Step: "hold-N", Quantity: "converter", Verdict: LoggerBox.Host.Judging.Verdict.Low });
        Assert.Contains("pump-worn", Judged.First(judgement));
    }
}
