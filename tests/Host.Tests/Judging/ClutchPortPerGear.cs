using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>Each clutch has a port of its own: one hose, moved between forward and reverse.</summary>
public sealed class ClutchPortPerGear
{
    private static readonly Step[] Forward = [Step.IdleForward, Step.HoldForward, Step.StallForward];
    private static readonly Step[] Reverse = [Step.IdleReverse, Step.HoldReverse, Step.StallReverse];

    [Fact]
    public void The_gear_without_its_hose_is_not_measured_and_accuses_nobody()
    {
        var judgement = Of(perGear: true, HoseOnForward());
        Assert.Equal(Verdict.In, Judged.Check(judgement, "hold-F", "clutch").Verdict);
        Assert.Equal(Verdict.NotMeasured, Judged.Check(judgement, "hold-R", "clutch").Verdict);
        Assert.Equal(Verdict.In, Judged.Check(judgement, "stall-R", "rpm").Verdict);
        Assert.Contains(judgement.Validity, note => note is { Code: "incomplete", Step: Step.HoldReverse });
        Assert.True(judgement.Suspects.Count == 0, Judged.Told(judgement));
    }

    [Fact]
    public void Readings_before_and_after_the_hose_was_moved_make_one_test()
    {
        var hoseOnReverse = new TestSession().Scale(Channel.Clutch, 0, Forward).Unfilled(forward: true);
        var judgement = Of(perGear: true, HoseOnForward(), hoseOnReverse);
        Assert.All(judgement.Checks, check => Assert.Equal(Verdict.In, check.Verdict));
        Assert.DoesNotContain(judgement.Validity, note => note.Code == "incomplete");
        Assert.True(judgement.Suspects.Count == 0, Judged.Told(judgement));
    }

    [Fact]
    public void At_a_common_port_the_same_readings_are_a_clutch_that_stays_empty() =>
        Assert.NotEmpty(Of(perGear: false, HoseOnForward()).Suspects);

    // A drained clutch still holds a little: 6 psi at idle and at speed.
    [Theory]
    [InlineData(6)]
    [InlineData(12)]
    public void What_little_stands_in_the_other_gear_is_no_engagement_and_no_leak(double residual)
    {
        var session = new TestSession { EngageReverse = 4.5 };
        foreach (Step step in Reverse)
        {
            session.Set(step, clutch: residual);
        }

        var judgement = Of(perGear: true, session);
        Assert.Equal(Verdict.NotMeasured, Judged.Check(judgement, "engage-R", "engagement-time").Verdict);
        Assert.Equal(Verdict.In, Judged.Check(judgement, "engage-F", "engagement-time").Verdict);
        Assert.Equal(Verdict.NotMeasured, Judged.Check(judgement, "idle-R", "clutch").Verdict);
        Assert.True(judgement.Suspects.Count == 0, Judged.Told(judgement));
    }

    private static TestSession HoseOnForward() => new TestSession().Scale(Channel.Clutch, 0, Reverse).Unfilled(forward: false);

    private static Judgement Of(bool perGear, params TestSession[] sessions) => Judge.Of(
        [.. sessions.Select(session => session.Build())], Sheet(perGear), new JobFacts(), PressureUnit.Psi);

    private static DataSheet Sheet(bool perGear) => TestSheet.Truck(clutchPortPerGear: perGear);
}
