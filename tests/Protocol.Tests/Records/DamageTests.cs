using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Protocol.Tests.Records;

public sealed class DamageTests
{
    private const int Seed = 42;

    [Fact]
    public void No_prefix_of_a_record_is_a_record()
    {
        Envelope envelope = new();
        foreach (byte[] bytes in AllBytes())
        {
            for (int length = 1; length < bytes.Length; length++)
            {
                // Judged by what is there alone: what follows in the buffer must not be looked at.
                RecordReader reader = new(bytes[..length]);
                Assert.Equal(EnvelopeResult.TooShort, reader.TryReadEnvelope(0, length, envelope));
            }
        }
    }

    [Fact]
    public void No_record_with_one_bit_turned_is_a_record()
    {
        Envelope envelope = new();
        foreach (byte[] bytes in AllBytes())
        {
            for (int bit = 0; bit < bytes.Length * 8; bit++)
            {
                byte[] damaged = [.. bytes];
                damaged[bit / 8] ^= (byte)(1 << (bit % 8));
                RecordReader reader = new(damaged);
                Assert.NotEqual(EnvelopeResult.Complete, reader.TryReadEnvelope(0, damaged.Length, envelope));
            }
        }
    }

    [Fact]
    public void A_turned_bit_anywhere_in_a_session_loses_the_record_that_it_hits_and_no_other()
    {
        List<byte[]> records = AllBytes().ToList();
        byte[] session = [.. records.SelectMany(bytes => bytes)];
        Random random = new(Seed);
        int start = 0;
        foreach (byte[] hit in records)
        {
            for (int i = 0; i < hit.Length; i++)
            {
                byte[] damaged = [.. session];
                damaged[start + i] ^= (byte)(1 << random.Next(8));
                RecordScan scan = new(damaged, 0, damaged.Length);
                List<uint> found = Sequences(scan);
                string place = $"seed {Seed}, byte {start + i}";
                Assert.True(found.SequenceEqual(Enumerable.Range(0, records.Count).Select(n => (uint)n).Where(n => records[(int)n] != hit)), place);
                Assert.True(scan.DamagedBytes + scan.UnfinishedBytes == hit.Length, place);
            }

            start += hit.Length;
        }
    }

    [Fact]
    public void A_session_cut_at_any_byte_gives_the_whole_records_before_the_cut()
    {
        List<byte[]> records = AllBytes().ToList();
        byte[] session = [.. records.SelectMany(bytes => bytes)];
        for (int length = 0; length <= session.Length; length++)
        {
            RecordScan scan = new(session[..length], 0, length);
            int whole = 0;
            int rest = length;
            while (whole < records.Count && rest >= records[whole].Length)
            {
                rest -= records[whole++].Length;
            }

            Assert.Equal(whole, Sequences(scan).Count);
            Assert.Equal(0, scan.DamagedBytes);
            Assert.Equal(rest, scan.UnfinishedBytes);
        }
    }

    [Fact]
    public void Records_of_an_unknown_code_are_passed_over()
    {
        byte[] known = Examples.Bytes(new EventRecord(), 1);
        byte[] unknown = Examples.Bytes(new LaterRecord(), 2);
        byte[] session = [.. known, .. unknown, .. known];
        RecordScan scan = new(session, 0, session.Length);
        Assert.Equal([1u, 2u, 1u], Sequences(scan));
        Assert.Equal(0, scan.DamagedBytes + scan.UnfinishedBytes);
    }

    [Fact]
    public void Random_bytes_full_of_marks_give_no_record()
    {
        Random random = new(Seed);
        byte[] noise = new byte[64 * 1024];
        random.NextBytes(noise);
        for (int i = 0; i < noise.Length - 4; i += random.Next(4, 40))
        {
            noise[i] = RecordFormat.FirstMark;
            noise[i + 1] = RecordFormat.SecondMark;
            noise[i + 3] = RecordFormat.Version;
        }

        RecordScan scan = new(noise, 0, noise.Length);
        Assert.False(scan.MoveNext(), $"seed {Seed}");
        Assert.Equal(noise.Length, scan.UnfinishedBytes);
    }

    private static List<uint> Sequences(RecordScan scan)
    {
        List<uint> found = [];
        while (scan.MoveNext())
        {
            found.Add(scan.Envelope.Sequence);
        }

        return found;
    }

    private static IEnumerable<byte[]> AllBytes() => Examples.Records().Select((record, n) => Examples.Bytes(record, (uint)n));

    private sealed class LaterRecord : IRecord
    {
        public RecordCode Code => (RecordCode)200;

        public void Write(ByteWriter writer) => writer.WriteInt64(-1);

        public bool TryRead(ByteReader reader) => throw new NotSupportedException();
    }
}
