using System;
using System.IO;
using System.Linq;
using LoggerBox.Host.Comparing;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Tests.Judging;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Comparing;

/// <summary>An invented truck before and after a repair.</summary>
public sealed class ComparisonTests
{
    [Fact]
    public void Two_versions_of_one_sheet_are_told_apart()
    {
        Judgement judged = Judged.Of(new TestSession());
        Assert.DoesNotContain(Comparison.Of(judged with { SheetVersion = "1a" }, judged with { SheetVersion = "1a" }).Notes, note => note.Contains("limits", StringComparison.Ordinal));
        Assert.Contains(
            Comparison.Of(judged with { SheetVersion = "1a" }, judged with { SheetVersion = "2b" }).Notes,
            note => note.StartsWith("truck.toml was changed in between (before 1a, after 2b): the limits may differ.", StringComparison.Ordinal));
    }

    [Fact]
    public void Readings_of_gears_that_nobody_tagged_are_not_dropped_without_a_word()
    {
        Judgement untagged = Judged.Of(new TestSession { GearsKnown = false });
        string note = Assert.Single(Comparison.Of(untagged, untagged).Notes, note => note.StartsWith("Not compared, because nobody knows in which gear", StringComparison.Ordinal));
        Assert.Contains("clutch pressure (hold speed, in gear)", note, StringComparison.Ordinal);
        Assert.DoesNotContain(Comparison.Of(Judged.Of(new TestSession()), Judged.Of(new TestSession())).Notes, note => note.StartsWith("Not compared", StringComparison.Ordinal));
    }

    private static readonly Step[] Forward = [Step.IdleForward, Step.HoldForward];

    [Fact]
    public void A_repaired_leak_is_gone_and_its_readings_have_changed()
    {
        var comparison = Comparison.Of(Judged.Of(Leaking()), Judged.Of(new TestSession()));
        Assert.Contains("forward-clutch-leak", comparison.Gone);
        Assert.Empty(comparison.Still);
        Assert.Empty(comparison.New);
        ReadingChange clutch = Reading(comparison, "hold-F", "clutch");
        Assert.Equal(158 - (158 * 0.6), clutch.Change!.Value, 1);
        Assert.True(clutch.IsReal);
        Assert.False(Reading(comparison, "hold-R", "clutch").IsReal);
        Assert.Equal("What was measured is normal after the repair", ComparisonText.Headline(comparison));
    }

    // Uncorrelated uncertainties add as the root of their squares: JCGM 100:2008, 5.1.2.
    [Fact]
    public void The_change_has_the_uncertainty_of_both_readings()
    {
        var comparison = Comparison.Of(Judged.Of(new TestSession()), Judged.Of(new TestSession { Scatter = 0.02 }));
        Assert.All(comparison.Readings, row => Assert.Equal(Math.Sqrt(Math.Pow(row.Before!.Uncertainty!.Value, 2) + Math.Pow(row.After!.Uncertainty!.Value, 2)), row.Uncertainty!.Value, 9));
        Assert.All(comparison.Readings.Where(row => row.Quantity != "engagement-time"), row => Assert.False(row.IsReal, $"{row.Step} {row.Quantity}"));
    }

    [Fact]
    public void A_change_whose_uncertainty_is_not_known_is_neither_real_nor_none()
    {
        Judgement judged = Judged.Of(new TestSession());
        Judgement unsure = judged with { Checks = [.. judged.Checks.Select(check => check with { Uncertainty = null })] };
        ReadingChange main = Reading(Comparison.Of(judged, unsure), "hold-F", "main");
        Assert.NotNull(main.Change);
        Assert.Null(main.Uncertainty);
        Assert.Null(main.IsReal);
    }

    [Fact]
    public void A_step_that_was_left_out_after_the_repair_proves_nothing()
    {
        var comparison = Comparison.Of(Judged.Of(Leaking()), Judged.Of(new TestSession().Without(Step.HoldForward)));
        Assert.Null(Reading(comparison, "hold-F", "main").After);
        Assert.Null(Reading(comparison, "hold-F", "main").IsReal);
        Assert.Contains(comparison.Notes, note => note.Contains("after the repair", StringComparison.Ordinal));
        Assert.Equal("No suspect after the repair so far; the test is not complete", ComparisonText.Headline(comparison));
    }

    [Fact]
    public void A_repair_that_brought_another_fault_says_so()
    {
        var comparison = Comparison.Of(Judged.Of(Leaking()), Judged.Of(new TestSession().Set(Step.Governed, rpm: 2650).Set(Step.Relief, rpm: 2490)));
        Assert.Equal(["governor-high"], comparison.New);
        Assert.Equal("Another suspect after the repair", ComparisonText.Headline(comparison));
        using StringWriter text = new();
        ComparisonText.Write(comparison, "job J1", "job J2", text);
        Assert.Contains("new   governor set too high  [governor-high]", text.ToString(), StringComparison.Ordinal);
        Assert.Contains("+200", text.ToString(), StringComparison.Ordinal);
    }

    private static TestSession Leaking() => new TestSession { EngageForward = 2.6 }.Scale(Channel.Clutch, 0.6, Forward).Scale(Channel.Main, 0.8, Forward).Scale(Channel.Converter, 0.5, Forward);

    private static ReadingChange Reading(Comparison comparison, string step, string quantity) =>
        comparison.Readings.Single(row => row.Step == step && row.Quantity == quantity);
}
