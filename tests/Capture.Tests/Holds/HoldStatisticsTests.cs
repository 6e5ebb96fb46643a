using System;
using System.Linq;
using LoggerBox.Capture.Holds;
using LoggerBox.Capture.Samples;
using LoggerBox.Capture.Tests.Holds.Runs;
using LoggerBox.Protocol.Records;
using MathNet.Numerics;
using MathNet.Numerics.Statistics;
using Xunit;

namespace LoggerBox.Capture.Tests.Holds;

/// <summary>A part of the runs that `tests/Benchmarks holds` does in thousands. Sigma is the scatter of single samples, 50 a second.</summary>
public class HoldStatisticsTests
{
    private const int Seed = 20;

    public static TheoryData<int, double, double, double> Approaches()
    {
        TheoryData<int, double, double, double> cells = [];
        foreach ((int channel, double sigma) in new[] { (Channel.Main, 20.0), (Channel.Speed, 40.0) })
        {
            foreach (double amplitude in new[] { 20.0, 100, 500 })
            {
                foreach (double timeConstant in new[] { 0.1, 0.5, 2 })
                {
                    cells.Add(channel, sigma, amplitude, timeConstant);
                }
            }
        }

        return cells;
    }

    [Theory]
    [MemberData(nameof(Approaches))]
    public void An_approach_is_settled_in_time_and_without_bias(int channel, double sigma, double amplitude, double timeConstant)
    {
        SettlingRuns runs = new(channel, sigma, amplitude, timeConstant, 6, 100, Seed);
        Assert.Equal(0, runs.Lost);
        Assert.True(runs.LateTime <= 1.15, $"95 % of the runs within {runs.LateTime:0.00} of the ideal time, seed {Seed}");
        Assert.InRange(runs.Bias, -0.25, 0.25);
    }

    [Theory]
    [InlineData(Channel.Main, 20, 1)]
    [InlineData(Channel.Main, 80, 1)]
    [InlineData(Channel.Main, 20, 3)]
    [InlineData(Channel.Speed, 100, 2)]
    [InlineData(Channel.Speed, 40, 5)]
    public void A_straight_drift_is_no_hold(int channel, double sigma, double slope)
    {
        Assert.Equal((0, 0), Holds(channel, sigma, slope, false));
        Assert.Equal((0, 0), Holds(channel, sigma, slope, true));
    }

    // Four and ten rpm a second: what a foot does, and a little more.
    [Theory]
    [InlineData(40, 1)]
    [InlineData(40, 2)]
    [InlineData(100, 1)]
    public void A_speed_that_creeps_as_a_foot_does_is_a_hold_that_says_so(double sigma, double slope)
    {
        Assert.Equal(0, Holds(Channel.Speed, sigma, slope, false).False);
        Assert.Equal(0, Holds(Channel.Speed, sigma, slope, true).False);
    }

    [Theory]
    [InlineData(Channel.Main, 20)]
    [InlineData(Channel.Speed, 40)]
    public void A_stand_says_nothing_of_a_drift(int channel, double sigma)
    {
        RampRuns stands = new(channel, sigma, 0, 5, false, 400, Seed);
        Assert.Equal((400, 0), (stands.False, stands.Drifting));
    }

    private static (int False, int Drifting) Holds(int channel, double sigma, double slope, bool between)
    {
        RampRuns runs = new(channel, sigma, slope, 5, between, 400, Seed);
        return (runs.False, runs.Drifting);
    }

    [Theory]
    [InlineData(0, 3)]
    [InlineData(0, 20)]
    [InlineData(0.5, 5)]
    [InlineData(0.9, 5)]
    [InlineData(0.9, 20)]
    public void The_interval_holds_the_true_level_as_often_as_it_says(double correlation, double seconds)
    {
        CoverageRuns runs = new(Channel.Main, 20, correlation, seconds, 50, 1500, Seed);
        Assert.InRange(runs.Covered, 93, 97);
        Assert.InRange(runs.Lost, 0, 15);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(100)]
    [InlineData(1000)]
    public void At_any_rate_a_stand_is_one_hold_and_a_slow_approach_is_cut(double perSecond)
    {
        Noise noise = new(Seed);
        double[] values = [.. Enumerable.Range(0, (int)(20 * perSecond)).Select(i => 10000 + (20 * noise.Next()) - (6000 * Math.Exp(-i / perSecond / 1.5)))];
        FoundHold hold = Assert.Single(FoundHolds.In(Channel.Main, values, perSecond));
        Assert.InRange(hold.Settled, 9988, 10012);
        Assert.InRange(hold.Start, 5, 11);
    }

    [Fact]
    public void Drop_outs_and_coarse_steps_of_the_converter_move_no_settled_value()
    {
        Random random = new(Seed);
        Noise noise = new(Seed);
        double[] values = [.. Enumerable.Range(0, 500).Select(_ => random.NextDouble() < 0.1 ? double.NaN : 50 * Math.Round((10010 + (10 * noise.Next())) / 50))];
        FoundHold hold = Assert.Single(FoundHolds.In(Channel.Main, values, 50));
        Assert.InRange(hold.Settled, values.Where(double.IsFinite).Average() - 3, values.Where(double.IsFinite).Average() + 3);
        double[] flat = [.. Enumerable.Repeat(10000.0, 300)];
        Assert.Equal(10000, Assert.Single(FoundHolds.In(Channel.Main, flat, 50)).Settled);
    }

    [Fact]
    public void Mean_scatter_and_line_of_a_stretch_are_those_of_a_library()
    {
        BinSpan span = new();
        Bin bin = new();
        Noise noise = new(Seed, 0.6);
        double[] values = [.. Enumerable.Range(0, 200).Select(i => Math.Round(2000000 + (37.5 * i) + (800 * noise.Next())))];
        for (int i = 0; i < values.Length; i++)
        {
            bin.StartMicroseconds = i * (long)Bin.Microseconds;
            Array.Fill(bin.Means, Bin.NoMean);
            bin.Means[Channel.Main] = (int)values[i];
            span.Add(bin);
        }

        double[] part = values[40..160];
        Assert.InRange(span.Mean(Channel.Main, 40, 160), part.Mean() - 0.51, part.Mean() + 0.51);
        Assert.InRange(span.Deviation(Channel.Main, 40, 160), part.StandardDeviation() - 1, part.StandardDeviation() + 1);
        StraightLine line = new(span);
        Assert.True(line.Begin(Channel.Main, 40, 160));
        while (!line.Advance())
        {
        }

        (double intercept, double slope) = Fit.Line([.. Enumerable.Range(0, part.Length).Select(i => i / 10.0)], part);
        Assert.InRange(line.Slope, slope - 1, slope + 1);
        double about = Math.Sqrt(part.Select((value, i) => Math.Pow(value - intercept - (slope * i / 10), 2)).Sum() / (part.Length - 2));
        Assert.InRange(line.Scatter, about - 2, about + 2);
    }
}
