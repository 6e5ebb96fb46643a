using System;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Tests.Encoding;

/// <summary>What blocks of a trace take, in bytes: everything of the record but its envelope.</summary>
public sealed class BlockSizes
{
    private readonly SampleBlock block = new();
    private readonly SampleBlock read = new();
    private readonly SampleSet sample = new();
    private readonly SampleSet back = new();
    private readonly byte[] body = new byte[RecordFormat.MaxBody];

    public long Bytes { get; private set; }

    public long Sets { get; private set; }

    public int Blocks { get; private set; }

    public int Longest { get; private set; }

    public double BytesPerSet => (double)Bytes / Sets;

    /// <summary>Encodes the trace, and decodes each block by itself: a difference is an error, not a figure.</summary>
    public static BlockSizes Of(short[] counts, uint intervalMicroseconds)
    {
        BlockSizes sizes = new();
        SampleSet sample = sizes.sample;
        sizes.block.Begin(intervalMicroseconds);
        for (int i = 0; i < counts.Length / Channel.Count; i++)
        {
            sample.Microseconds = 3_600_000_000 + ((long)intervalMicroseconds * i);
            for (int c = 0; c < Channel.Count; c++)
            {
                int stored = counts[(i * Channel.Count) + c];
                sample.Values[c] = c == Channel.Speed && stored != SampleSet.Missing ? stored + SampleBlock.SpeedMiddleTenths : stored;
            }

            sizes.Add(sample);
        }

        sizes.Close();
        return sizes;
    }

    /// <summary>Adds one set; a full block, or one that the set does not continue, is closed.</summary>
    private void Add(SampleSet set)
    {
        if (!block.TryAdd(set))
        {
            Close();
            block.TryAdd(set);
        }
    }

    private void Close()
    {
        ByteWriter writer = new(body);
        block.Write(writer);
        Compare(writer.Position);
        Bytes += writer.Position;
        Sets += block.Count;
        Blocks++;
        Longest = Math.Max(Longest, writer.Position);
        block.Begin(block.IntervalMicroseconds);
    }

    private void Compare(int length)
    {
        ByteReader reader = new(body);
        reader.Restart(0, length);
        bool same = read.TryRead(reader) && read.Count == block.Count && reader.Remaining == 0;
        SampleSet original = new();
        for (int i = 0; same && i < block.Count; i++)
        {
            block.CopyTo(i, original);
            read.CopyTo(i, back);
            same = original.Microseconds == back.Microseconds && original.Values.AsSpan().SequenceEqual(back.Values);
        }

        if (!same)
        {
            throw new InvalidOperationException($"Block {Blocks} did not come back as it was.");
        }
    }
}
