using System;
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

    // Main falls short at speed and the converter gets its oil: a pump that draws too little would starve the converter first (circuit of TM 10-3930-671-24).
    [Fact]
    public void A_converter_that_gets_its_oil_parts_the_regulator_from_the_strainer()
    {
        var session = new TestSession()
            .Scale(Channel.Main, 0.62, Step.HoldNeutral, Step.HoldForward, Step.HoldReverse, Step.Governed, Step.Relief, Step.StallForward, Step.StallReverse)
            .Scale(Channel.Clutch, 0.62, Step.HoldForward, Step.HoldReverse, Step.StallForward, Step.StallReverse);
        Assert.Equal(["regulator-low"], Judged.First(Judged.Of(session)));
    }

    // A pedal or a linkage that stops short lowers governed speed and both stalls alike; a governor that is set low leaves a stall far below it alone.
    [Fact]
    public void A_pedal_that_stops_short_is_no_governor_that_is_set_low()
    {
        var pedal = new TestSession().Set(Step.Governed, rpm: 2250).Set(Step.Relief, rpm: 2110).Set(Step.StallForward, rpm: 1630).Set(Step.StallReverse, rpm: 1632);
        var judgement = Judged.Of(pedal);
        Assert.Equal("engine-power-low", judgement.Suspects[0].Code);
        Assert.StartsWith("With a helper on the pedal", judgement.Suspects[0].Next, StringComparison.Ordinal);
        Assert.DoesNotContain("governor-low", Judged.First(judgement));
        Assert.Equal(["governor-low"], Judged.First(Judged.Of(new TestSession().Set(Step.Governed, rpm: 2250).Set(Step.Relief, rpm: 2090))));
    }

    /// <summary>Where the gear is not known a cause and its mirror stand together, however many share.</summary>
    [Fact]
    public void Without_gears_an_empty_clutch_has_its_causes_for_both_directions()
    {
        var session = new TestSession { GearsKnown = false, EngageForward = null, EngageReverse = null }
            .Scale(Channel.Clutch, 0.02, Step.IdleForward, Step.HoldForward).Scale(Channel.Main, 0.45, Step.IdleForward, Step.HoldForward)
            .Scale(Channel.Converter, 0.2, Step.IdleForward, Step.HoldForward);
        var ranks = Judged.Of(session).Suspects.ToDictionary(one => one.Code, one => one.Rank);
        Assert.Equal(1, ranks["forward-feed-open"]);
        Assert.Equal(ranks["forward-feed-open"], ranks["reverse-feed-open"]);
        Assert.Equal(ranks["forward-clutch-leak"], ranks["reverse-clutch-leak"]);
    }

    [Fact]
    public void Low_pressure_accuses_where_the_speed_was_not_measured()
    {
        var judgement = Judged.Of(new TestSession().Scale(Channel.Converter, 0.4, Everywhere).Without(Channel.Speed));
        Assert.Contains(judgement.Checks, check => check is { Step: "hold-N", Quantity: "converter", Verdict: LoggerBox.Host.Judging.Verdict.Low });
        Assert.Contains("pump-worn", Judged.First(judgement));
    }
}
