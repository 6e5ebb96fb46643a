using System;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>A ring gear of 135 teeth set as 126 shows every speed 126/135 of the true one (arithmetic), which a wide idle limit still takes.</summary>
public sealed class TeethCountedWrongly
{
    [Theory]
    [InlineData(126.0 / 135, "14/15")]
    [InlineData(135.0 / 126, "15/14")]
    public void All_speeds_off_by_one_ratio_suspect_the_pickup_beside_what_else_it_could_be(double scale, string fraction)
    {
        var judgement = Judged.Of(new TestSession { SpeedScale = scale }.Set(Step.IdleNeutral, rpm: 760).Set(Step.Relief, rpm: 2300), TestSheet.Truck(idle: TestSheet.Between(600, 900)));
        Assert.Equal(Verdict.In, Judged.Check(judgement, "idle-N", "rpm").Verdict);
        Suspect pickup = judgement.Suspects.Single(suspect => suspect.Code == "pickup-scale");
        Assert.True(pickup.Rank == 1 && Judged.First(judgement).Length is 2 or 3, Judged.Told(judgement));
        Assert.Contains(pickup.For, text => text.Contains(fraction, StringComparison.Ordinal));
    }

    /// <summary>A pedal that does not reach the floor leaves idle where it is: at this ratio the true idle would be 823 rpm.</summary>
    [Fact]
    public void An_idle_that_contradicts_the_ratio_clears_the_pickup()
    {
        var session = new TestSession().Set(Step.Governed, rpm: 2235).Set(Step.Relief, rpm: 2090).Set(Step.StallForward, rpm: 1640).Set(Step.StallReverse, rpm: 1640);
        Assert.DoesNotContain(Judged.Of(session, TestSheet.Truck(idle: TestSheet.Between(700, 800))).Suspects, suspect => suspect.Code == "pickup-scale");
    }

    [Theory]
    [InlineData(0.90, 1)]
    [InlineData(0.96, 0.95)]
    public void Speeds_off_by_different_ratios_do_not(double governed, double stall)
    {
        var session = new TestSession().Set(Step.Governed, rpm: 2450 * governed).Set(Step.Relief, rpm: 2290 * governed)
            .Set(Step.StallForward, rpm: 1800 * stall * 0.9).Set(Step.StallReverse, rpm: 1800 * stall);
        Assert.DoesNotContain(Judged.Of(session, TestSheet.Truck(idle: TestSheet.Between(600, 900))).Suspects, suspect => suspect.Code == "pickup-scale");
    }
}
