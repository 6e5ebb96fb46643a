using System;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>A dual-fuel truck makes less torque on gas: without knowing what it ran on, its stall proves nothing.</summary>
public sealed class FuelInUse
{
    private const string Text = """
        [truck]
        name = "Invented dual-fuel truck"
        source = "invented"
        [engine]
        idle_rpm = { min = 690, max = 830 }
        [engine.petrol]
        governed_rpm = { nominal = 2450, tolerance = 70 }
        stall_rpm = { nominal = 1990, tolerance = 80 }
        [engine.LPG]
        governed_rpm = { min = 2380, max = 2520 }
        stall_rpm = { nominal = 1800, tolerance = 80 }
        """;

    private static DataSheet Sheet => DataSheetReader.Parse(Text, "dual.toml");

    [Fact]
    public void Unknown_it_is_asked_for_and_nothing_is_called_normal()
    {
        var judgement = Judged.Of(new TestSession(), Sheet);
        ValidityNote note = Assert.Single(judgement.Validity, note => note is { Code: "incomplete", Step: Step.None });
        Assert.Equal(
            "The data sheet has figures by fuel (petrol, LPG), and nobody wrote down what the truck ran on: not judged stall in F, stall in R. Write the fuel on the work order and judge again.",
            note.Text);
        Assert.Equal("No suspect so far; the test is not complete", Outcome.Headline(judgement));
        Assert.DoesNotContain(judgement.Checks, check => check.Step == "stall-F");
    }

    [Fact]
    public void What_all_fuels_agree_on_is_judged_all_the_same() =>
        Assert.Equal(Verdict.In, Judged.Check(Judged.Of(new TestSession(), Sheet), "governed", "rpm").Verdict);

    [Theory]
    [InlineData("LPG", Verdict.In)]
    [InlineData(" Petrol ", Verdict.Low)]
    public void Known_its_own_figures_judge(string fuel, Verdict expected)
    {
        var judgement = Judged.Of(new TestSession(), Sheet, new JobFacts(Fuel: fuel));
        Assert.Equal(expected, Judged.Check(judgement, "stall-F", "rpm").Verdict);
        Assert.DoesNotContain(judgement.Validity, note => note is { Code: "incomplete", Step: Step.None });
    }
}
