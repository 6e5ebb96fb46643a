using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.PowerLoss;
using LoggerBox.PowerLoss.SeededBugs;
using LoggerBox.Protocol.Records;
using Xunit;
using Xunit.Abstractions;

namespace LoggerBox.Capture.Tests.Storage;

/// <summary>
/// The log on a card that loses power and goes wrong in ten ways. `dotnet run -c Release --project tests/PowerLoss` does the same with
/// ten times the states.
/// </summary>
public sealed class PowerLossTests(ITestOutputHelper output)
{
    private const int Seed = 1;

    public static IEnumerable<object[]> Bugs => SeededBugList.All.Select(bug => new object[] { bug.Name });

    [Fact]
    public void No_cut_and_no_fault_breaks_a_promise()
    {
        Campaign campaign = ShortCampaign.Make(Seed);
        campaign.Run(Environment.ProcessorCount);
        foreach (KeyValuePair<string, long> fault in campaign.StatesByFault)
        {
            output.WriteLine($"{fault.Key}: {fault.Value} states");
        }

        Assert.True(campaign.Violations.Count == 0, string.Join("\n", campaign.Violations));
        Assert.Equal(11, campaign.StatesByFault.Count);
        Assert.True(campaign.StatesByFault.Values.Sum() > 400_000);
    }

    [Fact]
    public void No_fault_at_random_breaks_a_promise_of_a_session_of_an_hour()
    {
        OneHour hour = new(Examples.OneHour(Seed), Seed, states: 3000);
        hour.Run(Environment.ProcessorCount);
        Assert.True(hour.Violations.Count == 0, string.Join("\n", hour.Violations));
        Assert.Equal(3000, hour.States);
    }

    [Fact]
    public void A_cut_costs_at_most_the_sets_of_one_block()
    {
        LossAfterCuts loss = LossAfterCuts.Measure(Seed);
        output.WriteLine($"{loss.States} states: {loss.Most} sets at most, {loss.Mean:F1} on average");
        Assert.InRange(loss.Most, 1, SampleBlock.Capacity);
    }

    [Theory]
    [MemberData(nameof(Bugs))]
    public void A_seeded_bug_is_found(string name)
    {
        SeededBug bug = SeededBugList.All.Single(one => one.Name == name);
        IReadOnlyList<string> found = BuggyLog.Violations(StorageFolder(), bug, Seed);
        Assert.True(found.Count > 0, $"{bug} was not found, seed {Seed}");
        output.WriteLine(found[0]);
    }

    private static string StorageFolder()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "LoggerBox.sln")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder!.FullName, "firmware", "capture", "Storage");
    }
}
