using System;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>
/// A stall speed is a guide (common practice): a broken input leaves the engine without load, and that shows at about governed speed, 2,450 rpm
/// here, not a few rpm above the stall's limit of 1,910.
/// </summary>
public sealed class StallALittleHigh
{
    [Theory]
    [InlineData(1916)]
    [InlineData(1935)]
    [InlineData(1990)]
    [InlineData(2180)]
    public void A_little_high_in_both_directions_is_noted_and_accuses_nobody(double rpm)
    {
        var judgement = Judged.Of(Both(rpm));
        Assert.True(judgement.Suspects.Count == 0, Judged.Told(judgement));
        Assert.Equal(Verdict.High, Judged.Check(judgement, "stall-F", "rpm").Verdict);
        Assert.Contains("no known cause", Outcome.Headline(judgement), StringComparison.Ordinal);
        string note = Assert.Single(judgement.Validity, note => note.Code == "stall-guide").Text;
        Assert.StartsWith($"Stall in F {rpm:0} rpm and in R {rpm:0} rpm, at most 1910 rpm: high in both directions alike is a guide, and no finding alone.", note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2180, false)]
    [InlineData(2240, false)]
    [InlineData(2400, true)]
    public void A_broken_input_is_suspected_near_governed_speed_only(double rpm, bool isBroken)
    {
        var judgement = Judged.Of(Both(rpm));
        Assert.True(isBroken == judgement.Suspects.Any(suspect => suspect.Code == "drive-input-broken"), Judged.Told(judgement));
        Assert.True(!isBroken || Judged.First(judgement).Contains("drive-input-broken"), Judged.Told(judgement));
        Assert.DoesNotContain(judgement.Suspects, suspect => suspect.Code is "governor-high");
    }

    [Fact]
    public void One_direction_a_little_high_still_accuses_its_clutch() =>
        Assert.Equal("forward-clutch-slip", Judged.Of(new TestSession().Set(Step.StallForward, rpm: 1950)).Suspects[0].Code);

    /// <summary>A limit that the sheet does not give is no evidence, even where a reading is weighed against one.</summary>
    [Fact]
    public void Only_limits_of_the_sheet_are_told()
    {
        DataSheet sheet = TestSheet.Truck(reliefDrop: new Limit(null, 250, null, 1));
        var judgement = Judged.Of(new TestSession().Set(Step.Governed, rpm: 2350).Set(Step.Relief, rpm: 2330).Set(Step.StallForward, rpm: 1560).Set(Step.StallReverse, rpm: 1562), sheet);
        string[] told = [.. judgement.Suspects.SelectMany(suspect => suspect.For.Concat(suspect.Against)).Where(text => text.StartsWith("Drop over relief", StringComparison.Ordinal))];
        Assert.NotEmpty(told);
        Assert.All(told, text => Assert.Contains("(at most 250 rpm)", text, StringComparison.Ordinal));
    }

    private static TestSession Both(double rpm) => new TestSession().Set(Step.StallForward, rpm: rpm).Set(Step.StallReverse, rpm: rpm);
}
