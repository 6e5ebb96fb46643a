using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Report;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Host.Tests.Report;

public sealed class LoneReadingsTests
{
    private const int Floor = 20;

    // The rule as its words say it: the median of those of the five that are there, sorted.
    [Theory]
    [InlineData(0)]
    [InlineData(40)]
    public void A_reading_stands_alone_where_it_is_far_from_the_sorted_five_around_it(int percentMissing)
    {
        const int Seed = 9;
        Random random = new(Seed);
        int[] raw = [.. Enumerable.Range(0, 20_000).Select(_ => Reading(random, percentMissing))];
        LoneReadings filter = new(Floor);
        double usual = 0;
        int lone = 0;
        for (int i = 0; i < raw.Length; i++)
        {
            (long microseconds, int value, bool isLone) = filter.Pass(i, raw[i]);
            int at = i - 2;
            if (at < 0 || raw[at] == SampleSet.Missing)
            {
                Assert.Equal(SampleSet.Missing, value);
                continue;
            }

            double distance = Math.Abs(raw[at] - Median(raw[Math.Max(0, at - 2)..(i + 1)]));
            double most = Floor + (8 * usual);
            usual += (Math.Min(distance, most) - usual) / 32;
            Assert.True((at, raw[at], distance > most) == (microseconds, value, isLone), $"seed {Seed}, reading {at}");
            lone += isLone ? 1 : 0;
        }

        Assert.InRange(lone, 10, raw.Length / 10);
    }

    private static double Median(IEnumerable<int> five)
    {
        int[] sorted = [.. five.Where(value => value != SampleSet.Missing).Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2.0;
    }

    private static int Reading(Random random, int percentMissing) =>
        random.Next(100) < percentMissing ? SampleSet.Missing : random.Next(100) == 0 ? random.Next(-30_000, 30_000) : random.Next(1000, 1010);
}
