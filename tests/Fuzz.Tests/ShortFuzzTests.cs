using System.Linq;
using Xunit;
using Xunit.Abstractions;

namespace LoggerBox.Fuzz.Tests;

/// <summary>
/// The same inputs at each run, so many that a target takes some seconds on a quiet machine. `dotnet run -c Release --project tests/Fuzz`
/// goes on for as long as one likes.
/// </summary>
public sealed class ShortFuzzTests(ITestOutputHelper output)
{
    private const int FirstSeed = 1;

    public static TheoryData<string, int> Targets => new()
    {
        { "frame", 40_000 },
        { "record", 60_000 },
        { "codec", 3_000 },
        { "link", 4_000 },
        { "card", 10_000 },
        { "session", 250 },
        { "trace", 5_000 },
        { "sheet", 1_500 },
        { "archive", 250 },
        { "jobfile", 700 },
    };

    [Theory]
    [MemberData(nameof(Targets))]
    public void Nothing_that_comes_from_outside_breaks_it(string name, int inputs)
    {
        using FuzzTarget target = FuzzTargets.ByName[name]();
        CampaignResult result = Campaign.Run(target, inputs, FirstSeed);
        output.WriteLine($"{name}: {result.Tried} inputs from seed {FirstSeed}, {result.Refused} refused");
        Assert.True(result.Wrong is null, $"`dotnet run -c Release --project tests/Fuzz -- --target {name} --seed N` for the N below:\n{result.Wrong}");
        Assert.Equal(inputs, result.Tried);
    }

    [Fact]
    public void Every_target_is_run() => Assert.Equal(FuzzTargets.ByName.Keys.Order(), Targets.Select(row => (string)row[0]).Order());

    [Fact]
    public void A_target_that_fails_is_told_with_its_seed()
    {
        using FailingTarget target = new();
        CampaignResult result = Campaign.Run(target, 1000, FirstSeed);
        Assert.Equal(7, result.Tried);
        Assert.StartsWith("seed 7: ", result.Wrong, System.StringComparison.Ordinal);
        Assert.Contains("broken", result.Wrong, System.StringComparison.Ordinal);
    }

    private sealed class FailingTarget : FuzzTarget
    {
        private int tried;

        public override string? Try(System.Random random) => ++tried < 7 ? null : throw new System.InvalidOperationException("broken");
    }
}
