using System;
using System.Collections.Generic;
using System.Linq;
using Xunit;
using Xunit.Abstractions;

namespace LoggerBox.Capture.Tests.Speed;

/// <summary>What is said of a reading's error holds: 95 % intervals, of which 93 must hold the truth (common practice, no source).</summary>
public class SpeedUncertaintyTests(ITestOutputHelper output)
{
    private const int Seed = 31;
    private const int Speeds = 300;
    private const double SlowestRpm = 300;
    private const double FastestRpm = 3000;
    private const double HalfThePolls = 50;

    [Theory]
    [InlineData(2, 0, 0)]
    [InlineData(2, 100, 0)]
    [InlineData(2, 0, 100)]
    [InlineData(4, 0, 0)]
    [InlineData(4, 100, 0)]
    [InlineData(4, 200, 200)]
    [InlineData(6, 100, 0)]
    [InlineData(12, 0, 0)]
    [InlineData(12, 100, 0)]
    [InlineData(12, 0, 100)]
    [InlineData(36, 100, 0)]
    [InlineData(36, 200, 200)]
    [InlineData(60, 0, 0)]
    [InlineData(60, 100, 0)]
    [InlineData(60, 0, 100)]
    [InlineData(150, 0, 0)]
    [InlineData(150, 100, 0)]
    [InlineData(150, 200, 200)]
    public void Above_half_the_poll_rate_the_printed_uncertainty_covers_the_error(int pulses, int lostOneIn, int doubledOneIn)
    {
        Random random = new(Seed + pulses);
        double slowest = Math.Max(SlowestRpm, HalfThePolls * 60 / pulses);
        List<(double Error, double Uncertainty, double Bound)> all = [];
        for (int i = 0; i < Speeds; i++)
        {
            double rpm = slowest + ((FastestRpm - slowest) * (i + random.NextDouble()) / Speeds);
            all.AddRange(new PolledPickup(pulses, 1, rpm, random) { LostOneIn = lostOneIn, DoubledOneIn = doubledOneIn }.WithUncertainty());
        }

        double covered = all.Count(one => Math.Abs(one.Error) <= one.Uncertainty) / (double)all.Count;
        double width = Math.Sqrt(all.Average(one => Math.Pow(one.Uncertainty / one.Bound, 2)));
        output.WriteLine($"{pulses}: {all.Count} readings, {100 * covered:F1} % covered, uncertainty {width:F1} bounds rms, error {Math.Sqrt(all.Average(one => Math.Pow(one.Error / one.Bound, 2))):F1}");
        Assert.InRange(covered, 0.93, 1);
        Assert.True(lostOneIn + doubledOneIn > 0 || width < 4, $"{width:F1} bounds");
    }
}
