using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>A gear is held against neutral as neutral was: at its speed, with the oil of the time, as closely as that is known.</summary>
public sealed class NeutralBeside
{
    // A regulator that opens at 1500 rpm: below it pressure goes with the square of the flow, above it hardly. No straight line goes from idle to relief.
    [Fact]
    public void Where_the_hold_in_neutral_is_missing_a_bend_accuses_nobody()
    {
        var judgement = Judged.Of(new TestSession().Without(Step.HoldNeutral).Set(Step.IdleNeutral, converter: 11).Set(Step.IdleForward, converter: 10.9)
            .Set(Step.IdleReverse, converter: 10.9).Set(Step.Relief, converter: 31.6).Set(Step.Governed, converter: 36.2));
        Assert.True(judgement.Suspects.Count == 0, Judged.Told(judgement));
    }

    [Fact]
    public void Where_it_is_there_the_same_difference_accuses_both_clutches()
    {
        var judgement = Judged.Of(new TestSession().Set(Step.HoldNeutral, converter: 28.4));
        Assert.Contains("both-clutches-leak", Judged.First(judgement));
    }

    // Warm oil leaks more through every gap (viscosity after ASTM D341 halves with each 15 to 20 °C): late readings stand lower, in neutral too.
    [Theory]
    [InlineData(0.82, 0)]
    [InlineData(1.0, 1)]
    public void A_late_reading_in_gear_is_held_against_a_late_one_in_neutral(double lateNeutral, int accused)
    {
        RecordedSession made = new TestSession().Scale(Channel.Main, 0.8, Step.IdleReverse).Scale(Channel.Clutch, 0.8, Step.IdleReverse).Build();
        HoldRecord reverse = made.Holds.Single(hold => hold.Step == Step.IdleReverse);
        reverse.StartMicroseconds = 900_000_000;
        var late = new HoldRecord();
        late.CopyFrom(made.Holds.Single(hold => hold.Step == Step.IdleNeutral));
        late.StartMicroseconds = 910_000_000;
        late.Readings[Channel.Main].SettledHundredths = (int)(late.Readings[Channel.Main].SettledHundredths * lateNeutral);
        IReadOnlyList<HoldRecord> holds = [.. made.Holds.OrderBy(hold => hold.StartMicroseconds), late];
        var session = new RecordedSession { Header = made.Header, Holds = holds, Engagements = made.Engagements, RunUps = made.RunUps, End = made.End };
        var judgement = Judge.Of([session], TestSheet.Truck(), new JobFacts(), PressureUnit.Psi);
        Assert.Equal(accused, judgement.Suspects.Count(suspect => suspect is { Code: "reverse-clutch-leak", Rank: 1 }));
    }
}
