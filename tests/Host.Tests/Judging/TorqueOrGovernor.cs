using System;
using LoggerBox.Host.Judging;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>
/// A stall that is a little low beside a sound governed speed: too little torque, or a governor that does not give it under load. An engine at
/// 80 and 70 % of its torque stalls 11 and 17 % lower and drops over relief 27 and 46 % farther (stall equilibrium and droop of an example truck,
/// computed from a converter's published table); the drop of a governor knows no such bound.
/// </summary>
public sealed class TorqueOrGovernor
{
    [Theory]
    [InlineData(1602, 2450 - 203)]
    [InlineData(1500, 2450 - 280)]
    public void A_drop_by_what_the_stall_lacks_is_the_engine_s(double stall, double relief)
    {
        var judgement = Judged.Of(Stalling(stall).Set(Step.Relief, rpm: relief));
        Assert.True(Judged.First(judgement)[0] == "engine-power-low", Judged.Told(judgement));
    }

    [Theory]
    [InlineData(1660)]
    [InlineData(1625)]
    public void A_drop_far_beyond_it_is_the_governor_s(double stall)
    {
        var judgement = Judged.Of(Stalling(stall).Set(Step.Relief, rpm: 2450 - 560));
        Assert.True(Judged.First(judgement) is ["governor-droop"], Judged.Told(judgement));
    }

    [Fact]
    public void Without_the_drop_both_share_the_first_rank_and_the_stator_does_not()
    {
        var judgement = Judged.Of(Stalling(1650).Without(Step.Relief));
        string[] first = Judged.First(judgement);
        Assert.Contains("engine-power-low", first);
        Assert.Contains("governor-droop", first);
        Assert.DoesNotContain("stator-slipping", first);
    }

    /// <summary>No droop makes a stall a quarter low (600 to 800 rpm: the one-way clutch, common practice).</summary>
    [Fact]
    public void A_stall_far_too_low_is_no_droop_s()
    {
        var judgement = Judged.Of(Stalling(1250).Without(Step.Relief));
        Assert.DoesNotContain("governor-droop", Judged.First(judgement));
        Assert.Contains("stator-slipping", Judged.First(judgement));
    }

    /// <summary>A pump's flow goes with its speed: an engine that a gear pulls down explains what its pump does not give.</summary>
    [Fact]
    public void An_engine_that_a_gear_pulls_down_explains_its_pressures_at_idle()
    {
        var session = new TestSession().Scale(Channel.Main, 0.5, Step.IdleForward, Step.IdleReverse).Scale(Channel.Clutch, 0.5, Step.IdleForward, Step.IdleReverse)
            .Set(Step.IdleForward, rpm: 560).Set(Step.IdleReverse, rpm: 562);
        var judgement = Judged.Of(session);
        Assert.All(judgement.Suspects, suspect => Assert.Contains(suspect.Code, new[] { "engine-power-low", "governor-droop", "work-hydraulics-loading" }));
        Assert.Contains(judgement.Suspects[0].For, text => text.StartsWith("Idle in F 560 rpm (in N at least 690 rpm)", StringComparison.Ordinal));
        Assert.Equal(Verdict.Low, Judged.Check(judgement, "idle-F", "main").Verdict);
    }

    private static TestSession Stalling(double rpm) => new TestSession().Set(Step.StallForward, rpm: rpm).Set(Step.StallReverse, rpm: rpm + 2);
}
