using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Capture.Tests.Samples;

public class SpikeFilterTests
{
    [Fact]
    public void A_single_wild_reading_is_left_out_and_its_neighbours_stay()
    {
        // The worked numbers of the Hampel identifier: median 100 of the window, 140 is wild, 97 is not.
        List<int> passed = Pass([98, 99, 100, 101, 102, 140, 97, 99, 100, 101], floor: 5);
        Assert.DoesNotContain(140, passed);
        Assert.Contains(97, passed);
        Assert.Equal(SampleSet.Missing, passed[5]);
    }

    [Fact]
    public void A_ramp_passes_untouched_however_steep()
    {
        int[] ramp = Enumerable.Range(0, 50).Select(i => i * 700).ToArray();
        Assert.Equal(ramp[2..^2], Pass(ramp, floor: 5)[2..]);
    }

    [Fact]
    public void A_step_is_no_spike()
    {
        int[] step = [.. Enumerable.Repeat(0, 20), .. Enumerable.Repeat(5000, 20)];
        Assert.DoesNotContain(SampleSet.Missing, Pass(step, floor: 5));
    }

    [Fact]
    public void Noise_is_left_as_it_is()
    {
        Random random = new(20);
        int[] noise = Enumerable.Range(0, 20000).Select(_ => (int)Math.Round(40 * Gaussian(random))).ToArray();
        int lost = Pass(noise, floor: 5).Count(value => value == SampleSet.Missing);
        Assert.InRange(lost, 0, 20);
    }

    [Fact]
    public void Holes_stay_holes()
    {
        List<int> passed = Pass([10, 10, SampleSet.Missing, 10, 10, 10, 10], floor: 5);
        Assert.Equal([10, 10, SampleSet.Missing, 10, 10], passed);
    }

    // What comes out for each reading but the last two, which have no neighbours yet.
    private static List<int> Pass(int[] readings, int floor)
    {
        SpikeFilter filter = new(floor);
        return readings.Select(filter.Pass).ToList()[2..];
    }

    private static double Gaussian(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
