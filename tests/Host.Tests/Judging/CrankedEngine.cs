using System;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>A starter turns an engine at some 80 to 250 rpm (common practice, no source): no charge pump gives what a limit means.</summary>
public sealed class CrankedEngine
{
    private static readonly Step[] Others =
        [Step.HoldNeutral, Step.HoldForward, Step.HoldReverse, Step.Governed, Step.Relief, Step.StallForward, Step.StallReverse];

    [Fact]
    public void Its_speed_accuses_and_its_pressures_do_not()
    {
        var session = Others.Aggregate(new TestSession { EngageForward = null, EngageReverse = null }, (made, step) => made.Without(step))
            .Set(Step.IdleNeutral, 91, 9, 0, 7).Set(Step.IdleForward, 91, 0.6, 0, 0.6).Set(Step.IdleReverse, 91, 9, 9, 7);
        var judgement = Judged.Of(session);
        Assert.Equal(Verdict.Low, Judged.Check(judgement, "idle-N", "rpm").Verdict);
        Assert.All(judgement.Checks.Where(check => check.Step.StartsWith("idle", StringComparison.Ordinal) && check.Quantity != "rpm"), check => Assert.Equal(Verdict.Void, check.Verdict));
        Assert.Equal(["engine-power-low", "work-hydraulics-loading"], Judged.First(judgement).Order());
        Assert.Equal(3, judgement.Validity.Count(note => note is { Code: "engine-cranked", Effect: ValidityEffect.Void }));
        Assert.Contains(judgement.Validity, note => note.Text.StartsWith("At idle in N the engine turned at 91 rpm: it was cranked", StringComparison.Ordinal));
    }
}
