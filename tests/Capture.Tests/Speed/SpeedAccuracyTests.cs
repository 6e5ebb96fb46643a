using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;
using Xunit.Abstractions;

namespace LoggerBox.Capture.Tests.Speed;

/// <summary>Half a pulse to 150 pulses a revolution, 300 to 3000 rpm.</summary>
public class SpeedAccuracyTests(ITestOutputHelper output)
{
    private const int Seed = 20;
    private const int Speeds = 600;

    // Half the polls, less what a poll that comes 2 ms late takes of two.
    private const double SlowPulsesPerSecond = 49;
    private const double MostOfTheBound = 1.05;
    private const double SlowestRpm = 300;
    private const double FastestRpm = 3000;

    [Theory]
    [InlineData(1, 2)]
    [InlineData(1, 1)]
    [InlineData(2, 1)]
    [InlineData(3, 1)]
    [InlineData(4, 1)]
    [InlineData(6, 1)]
    [InlineData(12, 1)]
    [InlineData(36, 1)]
    [InlineData(60, 1)]
    [InlineData(135, 1)]
    [InlineData(150, 1)]
    public void Clean_pulses_are_read_as_well_as_least_squares_can(int pulses, int revolutions)
    {
        double ratio = Ratio(pulses, revolutions, FastestRpm, 0, 0);
        Assert.InRange(ratio, 0.1, MostOfTheBound);
    }

    [Theory]
    [InlineData(1, 2, 100, 0)]
    [InlineData(1, 2, 0, 100)]
    [InlineData(1, 2, 200, 200)]
    [InlineData(1, 1, 100, 0)]
    [InlineData(1, 1, 0, 100)]
    [InlineData(1, 1, 200, 200)]
    [InlineData(4, 1, 100, 0)]
    [InlineData(4, 1, 0, 100)]
    [InlineData(4, 1, 200, 200)]
    public void One_pulse_in_a_hundred_lost_or_doubled_makes_no_difference_where_pulses_are_slow(int pulses, int revolutions, int lostOneIn, int doubledOneIn)
    {
        double slowerThanHalfThePolls = SlowPulsesPerSecond * 60 / pulses * revolutions;
        double ratio = Ratio(pulses, revolutions, Math.Min(FastestRpm, slowerThanHalfThePolls), lostOneIn, doubledOneIn);
        Assert.InRange(ratio, 0.1, MostOfTheBound);
    }

    private double Ratio(int pulses, int revolutions, double fastest, int lostOneIn, int doubledOneIn)
    {
        Random random = new(Seed + pulses);
        List<(double Rpm, double Error, double Bound)> all = [];
        for (int i = 0; i < Speeds; i++)
        {
            double rpm = SlowestRpm + ((fastest - SlowestRpm) * (i + random.NextDouble()) / Speeds);
            PolledPickup pickup = new(pulses, revolutions, rpm, random) { LostOneIn = lostOneIn, DoubledOneIn = doubledOneIn };
            all.AddRange(pickup.Readings().Select(reading => (rpm, reading.Error, reading.Bound)));
        }

        // Relative to each bound, so that every speed weighs the same.
        double ratio = Math.Sqrt(all.Average(one => Math.Pow(one.Error / one.Bound, 2)));
        output.WriteLine($"{pulses}/{revolutions}: {all.Count} readings, rms error {ratio:F3} of the bound, worst {all.Max(one => Math.Abs(one.Error / one.Bound)):F1} bounds, "
            + $"rms {100 * Math.Sqrt(all.Average(one => Math.Pow(one.Error / one.Rpm, 2))):F3} % of the speed");
        return ratio;
    }
}
