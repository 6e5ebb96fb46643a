using System;
using System.Linq;
using LoggerBox.Protocol.Encoding;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Protocol.Tests.Encoding;

public sealed class BlockDamageTests
{
    [Fact]
    public void No_record_of_an_encoded_block_with_one_bit_turned_is_a_record()
    {
        byte[] bytes = Examples.Bytes(Trace());
        Envelope envelope = new();
        for (int bit = 0; bit < bytes.Length * 8; bit++)
        {
            bytes[bit / 8] ^= (byte)(1 << (bit % 8));
            Assert.NotEqual(EnvelopeResult.Complete, new RecordReader(bytes).TryReadEnvelope(0, bytes.Length, envelope));
            bytes[bit / 8] ^= (byte)(1 << (bit % 8));
        }
    }

    [Fact]
    public void Below_the_crc_a_turned_bit_gives_a_refusal_or_as_many_sets_as_a_block_can_hold()
    {
        byte[] body = Body(Trace());
        for (int bit = 0; bit < body.Length * 8; bit++)
        {
            byte[] damaged = [.. body];
            damaged[bit / 8] ^= (byte)(1 << (bit % 8));
            ReadAnything(damaged);
        }
    }

    [Fact]
    public void Below_the_crc_any_bytes_give_a_refusal_or_as_many_sets_as_a_block_can_hold()
    {
        int seed = Environment.TickCount;
        Random random = new(seed);
        int taken = 0;
        for (int n = 0; n < 20_000; n++)
        {
            byte[] body = new byte[random.Next(RecordFormat.MaxBody)];
            random.NextBytes(body);
            body.AsSpan(0, Math.Min(body.Length, random.Next(40))).Fill(random.Next(2) == 0 ? (byte)0xFF : (byte)0);
            if (body.Length > 0)
            {
                body[0] = (byte)(SampleBlock.EncodedColumns | (random.Next(4) << 4));
            }

            Exception? failure = Record.Exception(() => taken += ReadAnything(body) ? 1 : 0);
            Assert.True(failure == null, $"seed {seed}, body {n}: {failure}");
        }

        Assert.True(taken > 0, $"seed {seed}: nothing was decoded at all");
    }

    [Fact]
    public void A_decoder_writes_no_further_than_the_count_and_reads_no_further_than_the_body()
    {
        byte[] body = Body(Trace());
        body.AsSpan(8).Fill(0x22);
        short[][] columns = [.. Enumerable.Range(0, Channel.Count).Select(_ => Enumerable.Repeat((short)1234, SampleBlock.Capacity).ToArray())];
        ByteReader reader = new(body);
        reader.Restart(8, 10);
        Assert.True(new BlockDecoder(columns).TryRead(reader, 40));
        Assert.True(reader.TooShort);
        Assert.Equal(18, reader.Position);
        Assert.All(columns, column => Assert.All(column[40..], value => Assert.Equal(1234, value)));
    }

    [Theory]
    [InlineData(0x02)]
    [InlineData(0x0F)]
    [InlineData(0x41)]
    [InlineData(0x80)]
    public void A_form_of_a_later_version_is_left_out(byte form)
    {
        byte[] body = Body(Trace());
        body[0] = form;
        ByteReader reader = new(body);
        Assert.False(new SampleBlock().TryRead(reader));
    }

    private static bool ReadAnything(byte[] body)
    {
        ByteReader reader = new(body);
        SampleBlock block = new();
        bool read = block.TryRead(reader);
        Assert.InRange(block.Count, 0, SampleBlock.Capacity);
        Assert.True(read || block.Count == 0);
        SampleSet sample = new();
        for (int i = 0; i < block.Count; i++)
        {
            block.CopyTo(i, sample);
            Assert.All(sample.Values, value => Assert.InRange(value, short.MinValue, 65534));
        }

        return read;
    }

    private static byte[] Body(SampleBlock block)
    {
        byte[] bytes = Examples.Bytes(block);
        return bytes[RecordFormat.HeaderLength..^RecordFormat.CrcLength];
    }

    private static SampleBlock Trace()
    {
        short[] counts = GeneratedTrace.Counts(2, 0, seed: 3);
        SampleBlock block = new();
        block.Begin(GeneratedTrace.IntervalMicroseconds);
        SampleSet sample = new();
        for (int i = 0; i < SampleBlock.Capacity; i++)
        {
            sample.Microseconds = i * GeneratedTrace.IntervalMicroseconds;
            for (int c = 0; c < Channel.Count; c++)
            {
                sample.Values[c] = counts[((i + 1000) * Channel.Count) + c];
            }

            sample.Values[Channel.Clutch] = i is > 20 and < 30 ? SampleSet.Missing : sample.Values[Channel.Clutch];
            Assert.True(block.TryAdd(sample));
        }

        return block;
    }
}
