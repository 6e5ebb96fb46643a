using System;
using LoggerBox.Host.Calibrating;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Host.Tests.Calibrating;

/// <summary>When a loop stands still. Bands after NAMUR NE 43 (secondary sources): 3.8 to 20.5 mA measure, 800 counts a milliampere.</summary>
public class SteadyCountsTests
{
    private readonly SteadyCounts steady = new();
    private readonly Random chance = new(3);

    [Fact]
    public void Three_seconds_of_noise_about_a_value_are_that_value()
    {
        Assert.Equal(LoopReading.Waiting, After(seconds: 2, second => 9600));
        Assert.Equal(LoopReading.Steady, After(seconds: 3, second => 9600));
        Assert.Equal(9600, steady.Mean, 5.0);
    }

    [Fact]
    public void A_lone_spike_moves_nothing()
    {
        Assert.Equal(LoopReading.Steady, After(seconds: 4, second => Math.Abs(second - 2.5) < 0.05 ? 16000 : 9600));
        Assert.Equal(9600, steady.Mean, 5.0);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(-30)]
    public void A_pressure_that_creeps_does_not_stand(double countsASecond) => Assert.Equal(LoopReading.Moving, After(seconds: 5, second => 9600 + (countsASecond * second)));

    [Fact]
    public void A_bad_contact_does_not_stand() => Assert.Equal(LoopReading.Moving, After(seconds: 5, second => 9600 + (chance.NextDouble() * 200)));

    [Theory]
    [InlineData(3.59, LoopReading.Open)]
    [InlineData(0, LoopReading.Open)]
    [InlineData(4, LoopReading.Steady)]
    [InlineData(20, LoopReading.Steady)]
    [InlineData(21.1, LoopReading.Shorted)]
    [InlineData(40, LoopReading.Shorted)]
    public void A_current_outside_the_band_is_no_pressure(double milliampere, LoopReading expected) => Assert.Equal(expected, After(seconds: 4, second => milliampere * 800));

    [Fact]
    public void What_is_told_twice_or_missing_counts_for_nothing()
    {
        for (int i = 0; i < 100; i++)
        {
            steady.Add(1_000_000, 9600);
            steady.Add(2_000_000 + i * 100_000, SampleSet.Missing);
        }

        Assert.Equal(LoopReading.Waiting, steady.State);
    }

    private LoopReading After(double seconds, Func<double, double> counts)
    {
        steady.Clear();
        for (int i = 0; i <= seconds * 10; i++)
        {
            double noise = (chance.NextDouble() + chance.NextDouble() + chance.NextDouble() - 1.5) * 10;
            steady.Add(i * 100_000L, (short)Math.Clamp(Math.Round(counts(i / 10.0) + noise), short.MinValue + 1, short.MaxValue));
        }

        return steady.State;
    }
}
