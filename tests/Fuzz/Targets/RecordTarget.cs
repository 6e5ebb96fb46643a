using System;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Fuzz.Targets;

/// <summary>Records below the CRC: a block's bytes are changed, its CRC is made again, and what is taken must be written as it was read.</summary>
public static class RecordTarget
{
    public static string? Try(Random random)
    {
        SampleBlock block = Block(random);
        RecordWriter writer = new();
        int length = writer.Write(block, 1, 1, 0);
        byte[] bytes = writer.Bytes[..length];
        int end = length - RecordFormat.CrcLength;
        for (int i = random.Next(4); i > 0; i--)
        {
            bytes[random.Next(RecordFormat.HeaderLength, end)] = (byte)random.Next(256);
        }

        uint crc = Crc32.Of(bytes, 0, end);
        BitConverter.TryWriteBytes(bytes.AsSpan(end), crc);
        RecordScan scan = new(bytes, 0, length);
        if (!scan.MoveNext() || scan.Envelope.RecordLength != length)
        {
            return "a record with a sound CRC is not found";
        }

        SampleBlock read = new();
        if (!scan.TryReadBody(read))
        {
            return null;
        }

        return read.Count > SampleBlock.Capacity ? "more sets than a block holds" : SameAgain(read, writer);
    }

    // A changed block may be written otherwise than it came; read again it is the same.
    private static string? SameAgain(SampleBlock read, RecordWriter writer)
    {
        int length = writer.Write(read, 1, 1, 0);
        SampleBlock again = new();
        RecordScan scan = new(writer.Bytes, 0, length);
        bool taken = length > 0 && scan.MoveNext() && scan.TryReadBody(again) && again.Count == read.Count;
        SampleSet one = new();
        SampleSet other = new();
        for (int i = 0; taken && i < read.Count; i++)
        {
            read.CopyTo(i, one);
            again.CopyTo(i, other);
            taken = one.Microseconds == other.Microseconds && one.Values.AsSpan().SequenceEqual(other.Values);
        }

        return taken ? null : "written again, a block reads otherwise";
    }

    private static SampleBlock Block(Random random)
    {
        SampleBlock block = new();
        block.Begin(20_000);
        SampleSet sample = new();
        int width = 1 << random.Next(1, 14);
        for (int i = random.Next(1, SampleBlock.Capacity + 1); i > 0; i--)
        {
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                sample.Values[channel] = 2000 + random.Next(width);
            }

            block.TryAdd(sample);
            sample.Microseconds += 20_000;
        }

        return block;
    }
}
