using System;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Fuzz.Mutations;

/// <summary>Blocks of all lengths and times, each column of its own kind.</summary>
internal static class RandomBlock
{
    private static readonly uint[] Intervals = [0, 0, 100, 5_000, 20_000, 25_500, 25_600, 12_345, 1, uint.MaxValue];
    private static readonly long[] Starts = [0, 1_000_000, (1L << 32) - 1, (1L << 48) - 1, 1L << 48, -1, long.MinValue, long.MaxValue - (1L << 40)];

    public static SampleBlock Of(Random random)
    {
        uint interval = Intervals[random.Next(Intervals.Length)];
        SampleBlock block = new();
        block.Begin(interval);
        SampleSet sample = new() { Microseconds = Starts[random.Next(Starts.Length)] };
        int[] kinds = [random.Next(7), random.Next(7), random.Next(7), random.Next(7)];
        int width = 1 << random.Next(1, 15);
        int sets = random.Next(3) == 0 ? SampleBlock.Capacity : random.Next(1, SampleBlock.Capacity + 1);
        for (int i = 0; i < sets; i++)
        {
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                sample.Values[channel] = Value(kinds[channel], i, width, random);
            }

            block.TryAdd(sample);
            sample.Microseconds += interval == 0 ? random.Next(1 << random.Next(1, 25)) : interval;
        }

        return block;
    }

    private static int Value(int kind, int row, int width, Random random) => kind switch
    {
        0 => 2000,
        1 => SampleSet.Missing,
        2 => 9000 + random.Next(width),
        3 => 1000 + (row * (width % 97)),
        4 => 12_000 + (int)(width * Math.Sin(row * 0.3)),
        5 => random.Next(8) == 0 ? SampleSet.Missing : 4000 + random.Next(5),
        _ => random.Next(4) == 0 ? short.MinValue : random.Next(2) == 0 ? 65534 : random.Next(short.MinValue, short.MaxValue + 1),
    };
}
