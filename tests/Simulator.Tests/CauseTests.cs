using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Simulator.Tests;

/// <summary>
/// Each cause moves the quantities that the trade's table of symptoms says, and leaves the others (common practice, no source).
/// </summary>
public sealed class CauseTests
{
    private const int Seed = 7;

    private static readonly Dictionary<string, Func<RunReadings, double>> Quantities = new()
    {
        ["governed"] = run => run.Rpm(Step.Governed),
        ["drop"] = run => run.Rpm(Step.Governed) - run.Rpm(Step.Relief),
        ["stall F"] = run => run.Rpm(Step.StallForward),
        ["stall R"] = run => run.Rpm(Step.StallReverse),
        ["main idle N"] = run => run.Main(Step.IdleNeutral),
        ["main idle F"] = run => run.Main(Step.IdleForward),
        ["main idle R"] = run => run.Main(Step.IdleReverse),
        ["main N"] = run => run.Main(Step.HoldNeutral),
        ["main F"] = run => run.Main(Step.HoldForward),
        ["main R"] = run => run.Main(Step.HoldReverse),
        ["clutch F"] = run => run.Clutch(Step.HoldForward),
        ["clutch R"] = run => run.Clutch(Step.HoldReverse),
        ["converter N"] = run => run.Converter(Step.HoldNeutral),
        ["converter F"] = run => run.Converter(Step.HoldForward),
        ["converter R"] = run => run.Converter(Step.HoldReverse),
        ["time F"] = run => run.Engagement(Step.IdleForward),
        ["time R"] = run => run.Engagement(Step.IdleReverse),
    };

    private static readonly Lazy<RunReadings> Healthy = new(() => new RunReadings("healthy", Seed));

    // "+" up, "-" down, "?" may go either way a little; every quantity that is not named stays.
    [Theory]
    [InlineData("engine-power-low", "drop+ stall F- stall R- main idle N? main idle F? main idle R?")]
    [InlineData("governor-low", "governed-")]
    [InlineData("governor-high", "governed+")]
    [InlineData("pump-worn", "main idle N- main idle F- main idle R- main N? main F? main R? clutch F? clutch R? converter N- converter F- converter R- time F? time R?")]
    [InlineData("regulator-low", "main idle N- main idle F- main idle R- main N- main F- main R- clutch F- clutch R- converter N? converter F? converter R? time F? time R?")]
    [InlineData("regulator-high", "main N+ main F+ main R+ clutch F+ clutch R+ converter N- converter F- converter R- time F? time R?")]
    [InlineData("forward-clutch-leak", "main idle F- main F? clutch F- converter F- time F?")]
    [InlineData("reverse-clutch-leak", "main idle R- main R? clutch R- converter R- time R?")]
    [InlineData("forward-clutch-slip", "stall F+ time F?")]
    [InlineData("reverse-clutch-slip", "stall R+ time R?")]
    [InlineData("stator-slipping", "stall F- stall R-")]
    [InlineData("modulator-slow", "time F+ time R+")]
    [InlineData("converter-relief-open", "converter N- converter F- converter R- main idle N? main idle F? main idle R?")]
    public void A_cause_moves_what_it_should_and_nothing_else(string code, string expected)
    {
        var run = new RunReadings(code, Seed);
        Dictionary<string, char> moves = Quantities.Keys
            .Select(name => (name, at: expected.IndexOf(name, StringComparison.Ordinal)))
            .Where(found => found.at >= 0)
            .ToDictionary(found => found.name, found => expected[found.at + found.name.Length]);
        foreach ((string name, Func<RunReadings, double> read) in Quantities)
        {
            double change = read(run) / read(Healthy.Value) - 1;
            switch (moves.GetValueOrDefault(name, '='))
            {
                case '+':
                    Assert.True(change > 0.05, $"{code}, seed {Seed}: {name} should rise, changed by {change:P1}");
                    break;
                case '-':
                    Assert.True(change < -0.05, $"{code}, seed {Seed}: {name} should fall, changed by {change:P1}");
                    break;
                case '=':
                    Assert.True(Math.Abs(change) < Unmoved(name), $"{code}, seed {Seed}: {name} should stay, changed by {change:P1}");
                    break;
            }
        }
    }

    [Fact]
    public void A_pickup_with_two_sparks_makes_the_idle_look_twice_as_fast()
    {
        var run = new RunReadings("pickup-scale", Seed);

        Assert.Equal(2, run.ShownRpm(Step.IdleNeutral) / run.Rpm(Step.IdleNeutral), 0.02);
        Assert.Equal(1, run.Rpm(Step.Governed) / Healthy.Value.Rpm(Step.Governed), 0.01);
    }

    // 12 psi of a 500 psi loop are 307 counts, of a 300 psi loop 512 (IEC 60381-1: 16 mA over the range; 1.25 uA a count).
    [Fact]
    public void A_shifted_channel_reads_off_with_the_engine_stopped_and_running()
    {
        var run = new RunReadings("pressure-zero-shift", Seed);
        int[] engineOff = Channels(channel => run.Counts(Step.Zero, channel) - 3200);
        int[] idle = Channels(channel => run.Counts(Step.IdleNeutral, channel) - Healthy.Value.Counts(Step.IdleNeutral, channel));
        int shifted = Array.FindIndex(engineOff, counts => counts > 250);

        Assert.Single(engineOff, counts => Math.Abs(counts) > 60);
        Assert.Equal(shifted == Channel.Converter - 1 ? 512 : 307, engineOff[shifted], 60.0);
        Assert.Equal(shifted == Channel.Converter - 1 ? 512 : 307, idle[shifted], 60.0);
    }

    // Converter pressure goes with the square of the flow: 50 rpm within the hold window are worth 10 % of it.
    private static double Unmoved(string quantity) => quantity.StartsWith("converter", StringComparison.Ordinal) ? 0.15 : 0.08;

    private static int[] Channels(Func<int, int> read) =>
        [read(Channel.Main), read(Channel.Clutch), read(Channel.Converter)];
}
