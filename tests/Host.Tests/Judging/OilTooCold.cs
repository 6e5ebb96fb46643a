using System;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>
/// Cold oil proves nothing by limits that are kept, and hides no other cause: it raises pressures and slows engagements, a governor it leaves
/// alone (common practice, no source).
/// </summary>
public sealed class OilTooCold
{
    private static readonly Step[] Idle = [Step.IdleNeutral, Step.IdleForward, Step.IdleReverse];
    private static readonly Step[] Faster = [Step.HoldNeutral, Step.HoldForward, Step.HoldReverse, Step.Governed, Step.Relief];

    private static DataSheet Warm => TestSheet.Truck(oil: TestSheet.Between(71, 93));

    [Theory]
    [InlineData(18, true, "Oil at 18 °C, below the sheet's 71 °C: ")]
    [InlineData(18, false, "Oil at 18 °C, below the usual 60 °C: ")]
    [InlineData(70, true, "Oil at 70 °C, below the sheet's 71 °C: ")]
    public void A_truck_tested_cold_is_told_to_warm_up_and_is_not_called_normal(double celsius, bool withWindow, string begins)
    {
        var judgement = Judged.Of(new TestSession().Oil(celsius), withWindow ? Warm : null);
        ValidityNote note = Assert.Single(judgement.Validity, note => note.Code == "oil-cold");
        Assert.StartsWith(begins, note.Text, StringComparison.Ordinal);
        Assert.EndsWith("Warm the truck up and repeat the test.", note.Text, StringComparison.Ordinal);
        Assert.Empty(judgement.Suspects);
        Assert.Equal("No suspect so far; the oil was cold", Outcome.Headline(judgement));
        Assert.True(Outcome.IsOpen(judgement));
    }

    [Theory]
    [InlineData(72, true)]
    [InlineData(75, false)]
    public void Warm_oil_is_not_mentioned(double celsius, bool withWindow)
    {
        var judgement = Judged.Of(new TestSession().Oil(celsius), withWindow ? Warm : null);
        Assert.DoesNotContain(judgement.Validity, note => note.Code == "oil-cold");
        Assert.Equal("What was measured is normal", Outcome.Headline(judgement));
    }

    [Theory]
    [InlineData(72, false)]
    [InlineData(70, true)]
    [InlineData(60, true)]
    [InlineData(20, true)]
    public void A_weak_engine_is_named_whatever_the_oil(double celsius, bool oilToo)
    {
        var session = new TestSession().Set(Step.StallForward, rpm: 1530).Set(Step.StallReverse, rpm: 1532).Set(Step.Relief, rpm: 2180).Oil(celsius);
        var judgement = Judged.Of(session, Warm);
        Assert.True(Judged.First(judgement).Contains("engine-power-low"), Judged.Told(judgement));
        Assert.True(oilToo == judgement.Suspects.Any(suspect => suspect.Code == "oil-cold"), Judged.Told(judgement));
    }

    [Fact]
    public void What_cold_oil_cannot_do_keeps_its_cause_beside_it()
    {
        var session = new TestSession { EngageForward = 2.6, EngageReverse = 2.7 }.Oil(10)
            .Set(Step.Governed, rpm: 2250).Set(Step.Relief, rpm: 2090)
            .Scale(Channel.Main, 1.3, Idle).Scale(Channel.Main, 1.25, Faster).Scale(Channel.Clutch, 1.3, [.. Idle, .. Faster]).Scale(Channel.Converter, 1.5, [.. Idle, .. Faster]);
        var judgement = Judged.Of(session, Warm);
        Assert.Equal("oil-cold", judgement.Suspects[0].Code);
        Assert.True(judgement.Suspects.Any(suspect => suspect.Code == "governor-low"), Judged.Told(judgement));
    }
}
