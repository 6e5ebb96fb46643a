using System;
using System.Linq;
using LoggerBox.Capture.Holds;
using Xunit;

namespace LoggerBox.Capture.Tests.Holds;

/// <summary>
/// Data sets and certified values: NIST Statistical Reference Datasets, univariate summary statistics. NumAcc1 to NumAcc4
/// (tenths stored as integers) catch the one-pass sum of squares; the others are measurements, in tests/recordings/statistics.
/// </summary>
public class RunningStatisticsTests
{
    [Fact]
    public void NumAcc1_three_large_integers()
    {
        RunningStatistics statistics = Of([10000001, 10000003, 10000002]);
        Assert.Equal(10000002, statistics.MeanScaled(1));
        Assert.Equal(1, statistics.DeviationScaled(1));
        Assert.Equal(1000, statistics.DeviationScaled(1000));
    }

    [Theory]
    [InlineData("NumAcc2", 12, 11, 13)]
    [InlineData("NumAcc3", 10000002, 10000001, 10000003)]
    [InlineData("NumAcc4", 100000002, 100000001, 100000003)]
    public void NumAcc2_to_4_small_scatter_on_a_large_mean(string name, long first, long odd, long even)
    {
        // Certified: mean is the first value, standard deviation 0.1, both exact; 1001 values in tenths.
        long[] values = [first, .. Enumerable.Range(0, 500).SelectMany(_ => new[] { odd, even })];
        RunningStatistics statistics = Of(values);
        Assert.True(values.Length == 1001, name);
        Assert.Equal(first * 1000, statistics.MeanScaled(1000));
        Assert.Equal(100000, statistics.DeviationScaled(100000));
    }

    [Theory]
    [InlineData("Lottery", 218, 1, 518.958715596330, 291.699727470969)]
    [InlineData("Michelso", 100, 100, 299.852400000000, 0.0790105478190518)]
    [InlineData("Mavro", 50, 100000, 2.00185600000000, 0.000429123454003053)]
    [InlineData("Lew", 200, 1, -177.435000000000, 277.332168044316)]
    public void Measurements_give_the_certified_mean_and_deviation(string name, int count, int scale, double mean, double deviation)
    {
        const int Digits = 10000;
        RunningStatistics statistics = Of(Recording.Numbers($"statistics/{name}.dat").Select(value => (long)Math.Round(value * scale)));
        Assert.Equal(count, statistics.Count);
        Assert.InRange(statistics.MeanScaled(Digits), (mean * scale * Digits) - 0.51, (mean * scale * Digits) + 0.51);
        Assert.InRange(statistics.DeviationScaled(Digits), (deviation * scale * Digits) - 1, (deviation * scale * Digits) + 1);
    }

    [Fact]
    public void The_mean_of_negative_values_is_rounded_like_that_of_positive_ones()
    {
        Assert.Equal(-Of([1, 2, 2]).MeanScaled(10), Of([-1, -2, -2]).MeanScaled(10));
        Assert.Equal(17, Of([1, 2, 2]).MeanScaled(10));
    }

    [Fact]
    public void Nothing_and_one_value_have_no_scatter()
    {
        Assert.Equal(0, new RunningStatistics().DeviationScaled(1000));
        Assert.Equal(0, Of([7]).DeviationScaled(1000));
        Assert.Equal(7, Of([7]).MeanScaled(1));
    }

    [Fact]
    public void A_spread_as_wide_as_a_sensor_gives_is_still_exact()
    {
        RunningStatistics statistics = Of(Enumerable.Range(0, 600).Select(i => i % 2 == 0 ? -3000000L : 3000000L));
        double expected = 3000000 * Math.Sqrt(600.0 / 599);
        Assert.InRange(statistics.DeviationScaled(1), (long)expected - 1, (long)expected + 1);
    }

    private static RunningStatistics Of(System.Collections.Generic.IEnumerable<long> values)
    {
        RunningStatistics statistics = new();
        foreach (long value in values)
        {
            statistics.Add(value);
        }

        return statistics;
    }
}
