using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

public class DemoTests
{
    // One wears as fast as another, so these get a second seed: another severity, another technician.
    private static readonly string[] Twice = ["engine-power-low", "pump-worn", "forward-clutch-leak", "reverse-clutch-slip", "stator-slipping", "modulator-slow"];

    // Without drive, or with wrong tags or a wrong speed on the display, some steps cannot be had: a clutch that stays empty voids its stall.
    private static readonly string[] SpoilsSteps =
        ["forward-feed-open", "reverse-feed-open", "selector-not-engaged", "drive-input-broken", "gear-tag-wrong", "engine-limited-by-control", "pressure-lines-swapped", "oil-low-or-aerated", "pickup-scale"];

    public static TheoryData<string, int> CausesAndSeeds()
    {
        var data = new TheoryData<string, int>();
        foreach (Cause cause in Enum.GetValues<Cause>())
        {
            data.Add(CauseCodes.Text(cause), 1);
        }

        foreach (string cause in Twice)
        {
            data.Add(cause, 2);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(CausesAndSeeds))]
    public void The_cause_that_is_put_into_the_truck_stands_in_the_first_rank_and_every_step_is_captured(string cause, int seed)
    {
        using var bench = new Workbench();
        CommandResult demo = Demo(bench, cause, seed);
        var judgement = new JudgementText(demo.Out);
        Assert.True(judgement.First.Contains(cause), $"{cause}, seed {seed}: {judgement.Root.GetProperty("suspects")}");
        if (!SpoilsSteps.Contains(cause))
        {
            AssertComplete(judgement, $"{cause}, seed {seed}");
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void A_healthy_truck_is_suspected_of_nothing(int seed)
    {
        using var bench = new Workbench();
        CommandResult demo = Demo(bench, "healthy", seed);
        var judgement = new JudgementText(demo.Out);
        Assert.True(judgement.Leading.Length == 0, $"seed {seed}: {judgement.Root.GetProperty("suspects")}");
        Assert.DoesNotContain("logger-warned", judgement.Validity);
        AssertComplete(judgement, $"healthy, seed {seed}");
        Assert.Equal(["archive.sqlite", "report.html", "sample-truck.toml"], bench.Files());
    }

    [Fact]
    public void The_account_is_readable()
    {
        using var bench = new Workbench();
        CommandResult demo = LoggerBoxCommand.Run("demo", "--cause", "forward-clutch-leak", "--out", bench.At("out")).Expect(0);
        Assert.Empty(demo.Error);
        foreach (string part in JudgementText.ContractSteps.Concat(["==> Suspect", "next: ", "▼ LOW", "NOT COVERED", "It is named first.", "report.html", "psi"]))
        {
            Assert.Contains(part, demo.Out, StringComparison.Ordinal);
        }

        if (!OperatingSystem.IsWindows())
        {
            Assert.Contains("/dev/", demo.Out, StringComparison.Ordinal);
        }

        string page = File.ReadAllText(Path.Combine(bench.At("out"), "report.html"));
        Assert.StartsWith("<!DOCTYPE html>", page, StringComparison.Ordinal);
        Assert.Contains("Forward clutch circuit leaks", page, StringComparison.Ordinal);
        Assert.Equal(4, page.Split("role=\"img\"").Length - 1);
    }

    [Fact]
    public void A_cause_that_does_not_exist_is_answered_with_those_that_do()
    {
        using var bench = new Workbench();
        LoggerBoxCommand.Run("demo", "--cause", "ghost-in-the-gearbox", "--out", bench.At("out")).Refused(2, "ghost-in-the-gearbox", "healthy", "pressure-zero-shift");
        LoggerBoxCommand.Run("simulate", "--cause", "ghost").Refused(2, "ghost", "pump-worn");
        Assert.Empty(bench.Files());
    }

    private static CommandResult Demo(Workbench bench, string cause, int seed) => LoggerBoxCommand.Run(
        "demo", "--cause", cause, "--seed", seed.ToString(System.Globalization.CultureInfo.InvariantCulture), "--out", bench.At(""), "--json").Expect(0);

    private static void AssertComplete(JudgementText judgement, string which)
    {
        Assert.Empty(JudgementText.ContractSteps.Except(judgement.StepsThatCount));
        Assert.False(judgement.Validity.Contains("incomplete"), $"{which}: {judgement.Root.GetProperty("validity")}");
        Assert.Equal(JsonValueKind.Number, judgement.Hold("hold-F").GetProperty("main").GetProperty("settled").ValueKind);
    }
}
