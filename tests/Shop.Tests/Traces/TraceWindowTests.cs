using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Shop.Traces;
using Xunit;

namespace LoggerBox.Shop.Tests.Traces;

/// <summary>What a picture shows, against a look at every sample.</summary>
public sealed class TraceWindowTests
{
    private const long Zero = 5_000_000;

    [Theory]
    [InlineData(1, 100_000, 0)]
    [InlineData(2, 33_333, 3)]
    [InlineData(3, 5_000, 9)]
    [InlineData(4, 1, 0)]
    [InlineData(5, 17, 1)]
    public void No_extreme_is_lost_in_any_stretch(int seed, int count, int holes)
    {
        var random = new Random(seed);
        List<RecordedSample> samples = Samples(random, count, holes);
        var pyramid = new Pyramid(Session(samples));
        double end = (samples[^1].Microseconds - Zero) / 1e6;
        for (int n = 0; n < 200; n++)
        {
            double from = random.NextDouble() * end;
            double to = n == 0 ? end : from + random.NextDouble() * (end - from);
            from = n == 0 ? 0 : from;
            int most = random.Next(16, 3000);
            TraceWindow window = TraceWindow.Of(pyramid, Zero, from, to, most);
            Assert.InRange(window.Columns, 0, most);
            RecordedSample[] inside = [.. samples.Where(sample => sample.Microseconds >= Zero + (long)(from * 1e6) && sample.Microseconds <= Zero + (long)(to * 1e6))];
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                HoldsAll(window, channel, inside, samples);
            }
        }
    }

    [Fact]
    public void A_stretch_of_few_samples_shows_each_with_its_own_time()
    {
        List<RecordedSample> samples = Samples(new Random(7), 10_000, 0);
        var pyramid = new Pyramid(Session(samples));
        TraceWindow window = TraceWindow.Of(pyramid, Zero, 20, 24, 500);
        RecordedSample[] inside = [.. samples.Where(sample => sample.Microseconds is >= Zero + 20_000_000 and <= Zero + 24_000_000)];
        Assert.Equal(inside.Select(sample => (sample.Microseconds - Zero) / 1e6), Enumerable.Range(0, window.Columns).Select(window.Second));
        Assert.Equal(inside.Select(sample => Extremes.Of(sample.MainCounts)), Enumerable.Range(0, window.Columns).Select(column => window.At(Channel.Main, column)));
    }

    [Fact]
    public void A_long_stretch_gets_at_least_a_third_of_the_columns()
    {
        var pyramid = new Pyramid(Session(Samples(new Random(8), 200_000, 0)));
        foreach (int most in (int[])[100, 500, 1500, 3000])
        {
            Assert.InRange(TraceWindow.Of(pyramid, Zero, 0, 4000, most).Columns, most / 3, most);
        }
    }

    [Fact]
    public void Clocks_that_contradict_each_other_give_no_picture_and_no_harm()
    {
        RecordedSample[] samples = [new(long.MinValue, 1, 1, 1, 1), new(0, 2, 2, 2, 2), new(long.MaxValue, 3, 3, 3, 3)];
        Assert.Equal(0, TraceWindow.Of(new Pyramid(Session(samples)), 0, -1e300, 1e300, 1000).Columns);
        Assert.Equal(0, TraceWindow.Of(new Pyramid(Session([])), 0, 0, 1, 1000).Columns);
    }

    [Fact]
    public void Bytes_carry_times_and_readings_in_the_wanted_unit_and_nothing_where_there_is_none()
    {
        var header = new SessionHeader { StartMicroseconds = Zero };
        header.Pressures[0].Kind = ChannelKind.CurrentLoop;
        header.Pressures[0].SpanCounts = 1000;
        header.Pressures[0].SpanPascal = 1_000_000;
        RecordedSample[] samples = [new(Zero, 7000, 250, 9, SampleSet.Missing), new(Zero + 20_000, SampleSet.Missing, 500, 9, 9)];
        byte[] bytes = TraceWindow.Of(new Pyramid(Session(samples)), Zero, 0, 1, 100).Bytes(header, PressureUnit.Bar);
        Assert.Equal(8 + 2 * (8 + 48), bytes.Length);
        Assert.Equal(2, BitConverter.ToInt32(bytes));
        Assert.Equal([0.0, 0.02], [BitConverter.ToDouble(bytes, 8), BitConverter.ToDouble(bytes, 16)]);
        float[] values = [.. Enumerable.Range(0, 24).Select(n => BitConverter.ToSingle(bytes, 24 + 4 * n))];
        Assert.Equal([700f, float.NaN, 700f, float.NaN, 700f, float.NaN, 2.5f, 5f, 2.5f, 5f, 2.5f, 5f], values[..12]);
        Assert.All(values[12..], value => Assert.True(float.IsNaN(value)));
    }

    private static void HoldsAll(TraceWindow window, int channel, RecordedSample[] inside, List<RecordedSample> all)
    {
        int[] readings = [.. inside.Select(sample => sample.Of(channel)).Where(raw => raw != SampleSet.Missing)];
        Extremes[] columns = [.. Enumerable.Range(0, window.Columns).Select(column => window.At(channel, column)).Where(column => !column.IsNone)];
        if (readings.Length == 0)
        {
            return;
        }

        Assert.True(columns.Min(column => column.Low) <= readings.Min());
        Assert.True(columns.Max(column => column.High) >= readings.Max());

        Assert.True(columns.Sum(column => (long)column.Count) >= readings.Length);

        // Nothing is made up either: each extreme is some sample's reading.
        HashSet<int> known = [.. all.Select(sample => sample.Of(channel))];
        Assert.All(columns, column => Assert.True(known.Contains(column.Low) && known.Contains(column.High) && column.Mean >= column.Low && column.Mean <= column.High));

        // Column by column, where columns stand for more than one sample.
        double width = window.Columns > 1 ? window.Second(1) - window.Second(0) : double.PositiveInfinity;
        for (int column = 0; inside.Length > window.Columns && column < window.Columns && double.IsFinite(width); column += 37)
        {
            double middle = window.Second(column);
            int[] within = [.. inside.Where(sample => Math.Abs((sample.Microseconds - Zero) / 1e6 - middle) < 0.499 * width).Select(sample => sample.Of(channel)).Where(raw => raw != SampleSet.Missing)];
            if (within.Length > 0)
            {
                Assert.True(window.At(channel, column).Low <= within.Min() && window.At(channel, column).High >= within.Max());
            }
        }
    }

    private static RecordedSession Session(IReadOnlyList<RecordedSample> samples) => new() { Header = new SessionHeader(), Samples = samples };

    private static List<RecordedSample> Samples(Random random, int count, int holes)
    {
        var samples = new List<RecordedSample>();
        long now = Zero;
        HashSet<int> before = [.. Enumerable.Range(0, holes).Select(_ => random.Next(count))];
        for (int i = 0; i < count; i++)
        {
            now += 20_000 + random.Next(-500, 500) + (before.Contains(i) ? random.Next(1, 60) * 1_000_000L : 0);
            int Reading() => random.Next(50) == 0 ? SampleSet.Missing : random.Next(2000) == 0 ? random.Next(-30_000, 30_000) : random.Next(4000, 4100);
            samples.Add(new RecordedSample(now, Reading(), Reading(), Reading(), Reading()));
        }

        return samples;
    }
}
