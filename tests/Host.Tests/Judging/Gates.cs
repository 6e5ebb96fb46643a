using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>What spoils a reading makes it void or noted, never failed.</summary>
public sealed class Gates
{
    [Fact]
    public void Hold_outside_its_speed_window_is_void()
    {
        var judgement = Judged.Of(new TestSession().Set(Step.HoldForward, rpm: 1900, main: 60));
        Assert.All(judgement.Checks.Where(c => c.Step == "hold-F"), check => Assert.Equal(Verdict.Void, check.Verdict));
        Assert.Contains(judgement.Validity, note => note is { Code: "speed-window", Effect: ValidityEffect.Void, Step: Step.HoldForward });
        Assert.Contains(judgement.Validity, note => note is { Code: "incomplete", Step: Step.HoldForward });
        Assert.False(judgement.Holds.Single(hold => hold.Step == Step.HoldForward).Counts);
        Assert.Empty(judgement.Suspects);
    }

    [Fact]
    public void Stall_without_clutch_pressure_is_void_and_accuses_nobody()
    {
        var judgement = Judged.Of(new TestSession().Set(Step.StallForward, rpm: 2420, clutch: 2));
        Assert.Equal(Verdict.Void, Judged.Check(judgement, "stall-F", "rpm").Verdict);
        Assert.Contains(judgement.Validity, note => note is { Code: "drive-cut", Effect: ValidityEffect.Void, Step: Step.StallForward });
        Assert.Empty(judgement.Suspects);
    }

    [Fact]
    public void Engine_off_reading_is_subtracted_and_noted()
    {
        var judgement = Judged.Of(new TestSession { ZeroMain = 3 });
        Assert.Equal(70, judgement.Holds.Single(hold => hold.Step == Step.IdleNeutral).Main!.Settled, 1);
        Assert.Equal(3, judgement.Validity.Count(note => note.Code == "zero-offset"));
        Assert.Empty(judgement.Suspects);
    }

    [Theory]
    [InlineData(5.5)]
    [InlineData(-7.0)]
    public void Engine_off_reading_beyond_5_psi_is_a_zero_shift(double offset)
    {
        var judgement = Judged.Of(new TestSession { ZeroClutch = offset });
        Assert.Equal(["pressure-zero-shift"], judgement.Suspects.Select(s => s.Code));
    }

    [Theory]
    [InlineData(5.5)]
    [InlineData(30.0)]
    public void A_zero_shift_beside_a_fault_is_told_behind_it(double offset)
    {
        var session = new TestSession { ZeroMain = offset }.Set(Step.StallForward, rpm: 1350).Set(Step.StallReverse, rpm: 1352);
        var judgement = Judged.Of(session);
        Assert.Contains("stator-slipping", Judged.First(judgement));
        Suspect shift = Assert.Single(judgement.Suspects, suspect => suspect.Code == "pressure-zero-shift");
        Assert.True(shift.Rank > 1 && shift == judgement.Suspects[^1], Judged.Told(judgement));
        Assert.True(judgement.Suspects.All(suspect => suspect.Score >= shift.Score), Judged.Told(judgement));
    }

    [Theory]
    [InlineData("clear, yellow", false)]
    [InlineData("no foam, not low", false)]
    [InlineData("Foaming a little", true)]
    [InlineData("low", true)]
    public void Oil_that_is_said_to_be_bad_is_believed_and_only_then(string look, bool isBad)
    {
        Step[] tests = [Step.IdleNeutral, Step.IdleForward, Step.IdleReverse, Step.HoldNeutral, Step.HoldForward, Step.HoldReverse, Step.Governed];
        var session = new TestSession { Scatter = 0.04 }.Scale(Channel.Main, 0.6, tests).Scale(Channel.Clutch, 0.6, tests).Scale(Channel.Converter, 0.4, tests);
        double Score(string? said) => Judged.Of(session, facts: new JobFacts(OilLook: said)).Suspects.Single(suspect => suspect.Code == "oil-low-or-aerated").Score;
        Assert.Equal(isBad, Score(look) > Score(null));
    }

    [Fact]
    public void A_cause_that_explains_nothing_of_what_is_off_is_not_suspected()
    {
        var session = new TestSession().Set(Step.Governed, rpm: 2650).Set(Step.Relief, rpm: 2490).Scale(Channel.Converter, 0.55, Step.IdleNeutral);
        Assert.Equal(["governor-high"], Judged.Of(session).Suspects.Select(suspect => suspect.Code));
    }

    [Fact]
    public void A_reading_too_close_to_call_asks_for_one_more_try_with_figure_and_limit()
    {
        var judgement = Judged.Of(new TestSession().Set(Step.HoldForward, main: 129.5));
        ValidityNote note = Assert.Single(judgement.Validity, note => note.Code == "borderline");
        Assert.Equal(Step.HoldForward, note.Step);
        Assert.Equal(ValidityEffect.Note, note.Effect);
        Assert.Equal("Too close to a limit to call: main pressure 129.5 psi (limits 129.0 to 185.0 psi). Repeat it once; the last good try counts.", note.Text);
        Assert.DoesNotContain(Judged.Of(new TestSession()).Validity, note => note.Code == "borderline");
    }

    // Four seconds of it: 1 % of the speed, 2 % of the pressure.
    [Theory]
    [InlineData(Channel.Speed, 5.2, "engine speed rose by 5 rpm a second")]
    [InlineData(Channel.Speed, -4.8, null)]
    [InlineData(Channel.Clutch, -0.9, "clutch pressure fell by 0.9 psi a second")]
    [InlineData(Channel.Clutch, 0.7, null)]
    public void A_hold_that_drifted_says_so_where_one_would_see_it_and_is_judged_all_the_same(int channel, double perSecond, string? change)
    {
        var judgement = Judged.Of(new TestSession { Drift = (Step.HoldForward, channel, perSecond) });
        string[] notes = [.. judgement.Validity.Where(note => note.Code == "drifting").Select(note => note.Text)];
        Assert.Equal(
            change is null ? [] : [$"Not quite at rest at the hold in F: {change}. What is shown is the middle, and its uncertainty holds the change. If it must be closer, hold longer with a steady foot."],
            notes);
        Assert.Equal(Verdict.In, Judged.Check(judgement, "hold-F", "clutch").Verdict);
    }

    [Theory]
    [InlineData(3.1, Verdict.High, true)]
    [InlineData(1.2, Verdict.NotMeasured, false)]
    public void An_engagement_that_was_cut_off_counts_only_where_it_was_too_long_by_then(double seconds, Verdict expected, bool noted)
    {
        var judgement = Judged.Of(new TestSession { EngageForward = seconds, EngageReverse = seconds, EngagementsCutOff = true });
        Assert.Equal(expected, Judged.Check(judgement, "engage-F", "engagement-time").Verdict);
        Assert.Equal(expected, Judged.Check(judgement, "engage-R", "engagement-time").Verdict);
        Assert.Equal(noted ? 2 : 0, judgement.Validity.Count(note => note.Code == "engagement-cut"));
        Assert.Equal(noted ? "modulator-slow" : null, judgement.Suspects.Select(suspect => suspect.Code).FirstOrDefault());
    }

    /// <summary>6 kPa of 154 is nothing, unless it is the mean of what jumped about.</summary>
    [Theory]
    [InlineData(5_000, true)]
    [InlineData(91_000, false)]
    public void A_clutch_reading_that_jumped_about_is_no_empty_clutch(double standard, bool isEmpty)
    {
        var session = new TestSession().Build();
        var hold = new MeasuredHold(session, session.Holds[0], Step.IdleForward, null, Pascal(154_000, 5_000), Pascal(6_000, standard), null);
        Assert.Equal(isEmpty, HoldGates.ClutchIsEmpty(hold));
    }

    [Fact]
    public void Oil_temperature_that_nobody_wrote_down_is_noted()
    {
        Assert.Contains(Judged.Of(new TestSession()).Validity, note => note.Code == "oil-temperature-unknown");
        Assert.DoesNotContain(Judged.Of(new TestSession(), facts: new JobFacts(OilCelsius: 80)).Validity, note => note.Code == "oil-temperature-unknown");
    }

    [Fact]
    public void Wrong_pulses_per_revolution_are_told_with_their_ratio()
    {
        var suspect = Judged.Of(new TestSession { SpeedScale = 2 }).Suspects.Single();
        Assert.Equal("pickup-scale", suspect.Code);
        Assert.Contains(suspect.For, text => text.Contains("2 times", System.StringComparison.Ordinal));
    }

    [Fact]
    public void High_site_puts_thin_air_before_the_engine()
    {
        var session = new TestSession().Set(Step.StallForward, rpm: 1650).Set(Step.StallReverse, rpm: 1652);
        Assert.Equal("air-thin", Judged.Of(session, facts: new JobFacts(AltitudeMetres: 1500, AirCelsius: 30)).Suspects[0].Code);
        Assert.Equal("engine-power-low", Judged.Of(session, facts: new JobFacts(AltitudeMetres: 0, AirCelsius: 15)).Suspects[0].Code);
    }

    // SAE J1349 as quoted publicly: 990 hPa and 25 degrees give 1, 845.6 hPa and 5 degrees 1.1543; ISA at 1500 m is 845.6 hPa.
    [Fact]
    public void Air_correction_gives_the_published_factors()
    {
        Assert.Equal(1.0000, SiteAir.CorrectionFactor(990, 25), 4);
        Assert.Equal(1.1543, SiteAir.CorrectionFactor(845.6, 5), 3);
        Assert.Equal(845.6, SiteAir.PressureHectopascal(1500), 1);
        Assert.Equal(0, SiteAir.TorqueLoss(null, null));
    }

    private static Measured Pascal(double value, double standard) => new(value, new UncertaintyBudget().Add(standard));
}
