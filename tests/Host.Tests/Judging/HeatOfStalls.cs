using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Judging.Measuring;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>Worked values of common practice: a stall at 1974 rpm with 168 rpm/sqrt(N m) puts 28.5 kW into the oil.</summary>
public class HeatOfStalls
{
    [Fact]
    public void Power_follows_from_speed_and_capacity_factor() =>
        Assert.Equal(28.5, StallHeat.Power(new Measured(1974, new UncertaintyBudget()), 168).Value / 1000, 1);

    [Theory]
    [InlineData(12, 0, 1.19)]
    [InlineData(12, 40, 0.67)]
    [InlineData(3.5, 0, 4.1)]
    public void Oil_alone_warms_faster_than_oil_with_metal(double oil, double metal, double kelvinPerSecond) =>
        Assert.InRange(StallHeat.KelvinPerSecond(28500, oil, metal), kelvinPerSecond - 0.035, kelvinPerSecond + 0.035);

    [Fact]
    public void Neutral_cools_with_a_time_constant_of_some_three_minutes() => Assert.InRange(StallHeat.CoolingSeconds(12, 40), 165, 175);

    [Fact]
    public void A_judgement_shows_the_heat_only_where_the_sheet_knows_the_converter()
    {
        var session = new TestSession();
        Assert.Empty(Judged.Of(session).StallHeats);
        DataSheet sheet = DataSheetReader.Parse("[truck]\nname = \"t\"\n[converter]\nk_rpm_per_sqrt_lbft = 190\noil_l = 14\n", "c.toml");
        Judgement judgement = Judged.Of(session, sheet);
        Assert.Equal(2, judgement.StallHeats.Count);
        Assert.All(judgement.StallHeats, heat =>
        {
            Assert.InRange(heat.PowerWatts, 20000, 25500);
            Assert.InRange(heat.PowerUncertainty / heat.PowerWatts, 0.05, 0.12);
            Assert.True(heat.RiseKelvin > heat.RiseUncertainty && heat.WaitSeconds > 60);
        });
        Assert.Equal(judgement.Suspects.Select(suspect => suspect.Code), Judged.Of(session, DataSheetReader.Parse("[truck]\nname = \"t\"\n", "c.toml")).Suspects.Select(suspect => suspect.Code));
        Assert.Equal(DataSheetReader.VersionOf("[truck]\r\nname = \"t\"\r\n"), Judged.Of(session, DataSheetReader.Parse("[truck]\nname = \"t\"\n", "c.toml")).SheetVersion);
    }

    [Theory]
    [InlineData("[converter]\noil_l = 12\n")]
    [InlineData("[converter]\nk_rpm_per_sqrt_nm = 168\nk_rpm_per_sqrt_lbft = 196\n")]
    [InlineData("[converter]\nk_rpm_per_sqrt_nm = 168\ntorque_ratio = 2.2\n")]
    public void A_converter_without_one_factor_or_with_unknown_keys_is_refused(string text) =>
        Assert.Throws<UserErrorException>(() => DataSheetReader.Parse(text, "c.toml"));
}
