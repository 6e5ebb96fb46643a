using System;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Tests.Encoding;

/// <summary>Blocks of every kind: steps, walks, noise of any size, alternating extremes, constants, readings that come and go.</summary>
public static class RandomBlocks
{
    private static readonly short[] Extremes = [short.MinValue, short.MinValue + 1, -1, 0, 1, short.MaxValue - 1, short.MaxValue];

    public static uint Interval(Random random) => (uint)new[] { 1000, 10000, 20000, 12345, 25500, 25600, 1 }[random.Next(7)];

    public static short[] Counts(Random random)
    {
        int sets = random.Next(4) == 0 ? random.Next(1, SampleBlock.Capacity) : SampleBlock.Capacity;
        short[] counts = new short[sets * Channel.Count];
        for (int c = 0; c < Channel.Count; c++)
        {
            Fill(counts, c, random);
        }

        return counts;
    }

    public static SampleBlock Filled(Random random)
    {
        short[] counts = Counts(random);
        uint interval = Interval(random);
        SampleBlock block = new();
        block.Begin(interval);
        SampleSet sample = new();
        for (int i = 0; i < counts.Length / Channel.Count; i++)
        {
            sample.Microseconds = 77_777 + ((long)interval * i);
            for (int c = 0; c < Channel.Count; c++)
            {
                int stored = counts[(i * Channel.Count) + c];
                sample.Values[c] = c == Channel.Speed && stored != SampleSet.Missing ? stored + SampleBlock.SpeedMiddleTenths : stored;
            }

            block.TryAdd(sample);
        }

        return block;
    }

    private static void Fill(short[] counts, int channel, Random random)
    {
        int kind = random.Next(7);
        int spread = 1 << random.Next(1, 17);
        int level = random.Next(short.MinValue, short.MaxValue);
        int missing = random.Next(3) == 0 ? random.Next(2, 20) : 0;
        for (int i = channel; i < counts.Length; i += Channel.Count)
        {
            level = kind is 1 or 2 ? Wrap(level + random.Next(-spread, spread + 1)) : level;
            level = kind == 2 && random.Next(20) == 0 ? random.Next(short.MinValue, short.MaxValue) : level;
            counts[i] = kind switch
            {
                0 => (short)level,
                1 or 2 => (short)level,
                3 => Wrap(level + random.Next(-spread, spread + 1)),
                4 => Extremes[random.Next(Extremes.Length)],
                5 => Extremes[(i / Channel.Count) % 2 == 0 ? 1 : 6],
                _ => Wrap((i * spread / 8) + random.Next(5)),
            };
            counts[i] = missing > 0 && (i / Channel.Count / missing) % 2 == 0 ? (short)SampleSet.Missing : counts[i];
        }
    }

    private static short Wrap(int value) => unchecked((short)value);
}
