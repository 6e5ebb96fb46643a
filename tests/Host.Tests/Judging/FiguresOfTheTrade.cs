using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>Figures that technicians go by: common practice, no source. For tests only.</summary>
public sealed class FiguresOfTheTrade
{
    [Fact]
    public void Governed_as_listed_and_drop_as_listed_are_in()
    {
        var judgement = Judged.Of(new TestSession().Set(Step.Governed, rpm: 2600).Set(Step.Relief, rpm: 2400), Sheet());
        Assert.Equal(Verdict.In, Judged.Check(judgement, "governed", "rpm").Verdict);
        Assert.Equal(Verdict.In, Judged.Check(judgement, "governed", "rpm-drop").Verdict);
        Assert.Empty(judgement.Suspects);
    }

    [Fact]
    public void Stall_on_the_edge_of_its_tolerance_is_not_low_and_accuses_nobody()
    {
        var judgement = Judged.Of(Truck().Set(Step.StallForward, rpm: 1700).Set(Step.StallReverse, rpm: 1700), Sheet());
        Assert.Equal(Verdict.CloseLow, Judged.Check(judgement, "stall-F", "rpm").Verdict);
        Assert.Empty(judgement.Suspects);
    }

    [Fact]
    public void Pressures_at_idle_and_2000_rpm_are_in()
    {
        var session = Truck().Set(Step.IdleNeutral, main: 80).Set(Step.IdleForward, main: 80, clutch: 70).Set(Step.IdleReverse, main: 80, clutch: 70)
            .Set(Step.HoldForward, main: 150, clutch: 150, converter: 21).Set(Step.HoldReverse, main: 150, clutch: 150, converter: 21)
            .Set(Step.HoldNeutral, main: 150, converter: 21);
        var judgement = Judged.Of(session, Sheet());
        Assert.All(judgement.Checks.Where(c => c.Unit == "psi"), check => Assert.Equal(Verdict.In, check.Verdict));
        Assert.Empty(judgement.Suspects);
    }

    [Theory]
    [InlineData(Step.IdleForward, Step.HoldForward, "forward")]
    [InlineData(Step.IdleReverse, Step.HoldReverse, "reverse")]
    public void Main_normal_in_neutral_and_low_in_one_gear_points_to_that_gears_clutch_circuit(Step idle, Step hold, string direction)
    {
        var session = Truck().Set(idle, main: 22, clutch: 18, converter: 3).Set(hold, main: 110, clutch: 104, converter: 9);
        var judgement = Judged.Of(session, Sheet());
        Assert.StartsWith(direction, judgement.Suspects[0].Code, System.StringComparison.Ordinal);
    }

    [Fact]
    public void Stall_300_low_both_ways_with_sound_engine_speeds_points_to_the_stator()
    {
        var session = Truck().Set(Step.StallForward, rpm: 1400).Set(Step.StallReverse, rpm: 1395);
        Assert.Equal("stator-slipping", Judged.Of(session, Sheet()).Suspects[0].Code);
    }

    [Fact]
    public void Stall_300_low_both_ways_with_a_large_drop_points_to_the_engine_first()
    {
        var session = Truck().Set(Step.StallForward, rpm: 1450).Set(Step.StallReverse, rpm: 1445).Set(Step.Relief, rpm: 2250);
        Assert.Equal("engine-power-low", Judged.Of(session, Sheet()).Suspects[0].Code);
    }

    private static TestSession Truck() => new TestSession().Set(Step.Governed, rpm: 2600).Set(Step.Relief, rpm: 2400);

    private static DataSheet Sheet() => new()
    {
        FileName = "trade.toml",
        Unit = PressureUnit.Psi,
        Engine = new EngineLimits(
            GovernedRpm: new Limit(2540, 2660, 2600, 1),
            ReliefDropRpm: new Limit(150, 250, 200, 1),
            StallForwardRpm: new Limit(1700, 1900, 1800, 1),
            StallReverseRpm: new Limit(1700, 1900, 1800, 1)),
        Idle = new PressureLimits(
            new GearPressures(TestSheet.Between(28, 85)),
            new GearPressures(TestSheet.Between(28, 85), TestSheet.Between(21, 85)),
            new GearPressures(TestSheet.Between(28, 85), TestSheet.Between(21, 85))),
        Hold = new PressureLimits(
            new GearPressures(TestSheet.Between(128, 185), null, TestSheet.AtLeast(18)),
            new GearPressures(TestSheet.Between(128, 185), TestSheet.Between(121, 185), TestSheet.AtLeast(18)),
            new GearPressures(TestSheet.Between(128, 185), TestSheet.Between(121, 185), TestSheet.AtLeast(18))),
    };
}
