using System;
using System.Linq;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Protocol.Tests.Encoding;

public sealed class BlockCodingTests
{
    [Fact]
    public void Random_and_extreme_blocks_come_back_bit_by_bit()
    {
        int seed = Environment.TickCount;
        Random random = new(seed);
        for (int n = 0; n < 6_000; n++)
        {
            Exception? failure = Record.Exception(() => BlockSizes.Of(RandomBlocks.Counts(random), RandomBlocks.Interval(random)));
            Assert.True(failure == null, $"seed {seed}, block {n}: {failure?.Message}");
        }
    }

    [Fact]
    public void A_reader_written_from_the_document_reads_what_the_code_writes()
    {
        const int Seed = 5;
        Random random = new(Seed);
        int encoded = 0;
        byte[] body = new byte[RecordFormat.MaxBody];
        for (int n = 0; n < 1_500; n++)
        {
            SampleBlock block = RandomBlocks.Filled(random);
            ByteWriter writer = new(body);
            block.Write(writer);
            if ((body[0] & 15) == SampleBlock.EncodedColumns)
            {
                encoded++;
                AssertColumns(block, DocumentReader.Columns(body[..writer.Position]), $"seed {Seed}, block {n}");
            }
        }

        Assert.True(encoded > 500, $"only {encoded} blocks were encoded");
    }

    [Fact]
    public void A_block_that_was_read_is_written_as_it_was()
    {
        byte[] first = Examples.Bytes(Examples.Block(20000, SampleBlock.Capacity));
        RecordReader reader = new(first);
        Envelope envelope = new();
        Assert.Equal(EnvelopeResult.Complete, reader.TryReadEnvelope(0, first.Length, envelope));
        SampleBlock read = new();
        Assert.True(reader.TryReadBody(envelope, read));
        Assert.Equal(first, Examples.Bytes(read));
        Assert.Equal(first, Examples.Bytes(read));
    }

    [Fact]
    public void A_block_that_grows_after_it_was_written_is_written_whole_the_next_time()
    {
        SampleBlock block = Examples.Block(20000, 100);
        Examples.Bytes(block);
        SampleSet sample = new() { Microseconds = 1_000_000 + (100 * 20000) };
        Assert.True(block.TryAdd(sample));
        SampleBlock read = new();
        byte[] bytes = Examples.Bytes(block);
        ByteReader reader = new(bytes);
        reader.Restart(RecordFormat.HeaderLength, bytes.Length - RecordFormat.EnvelopeLength);
        Assert.True(read.TryRead(reader));
        Assert.Equal(Examples.Text(block), Examples.Text(read));
    }

    private static void AssertColumns(SampleBlock block, int[][] columns, string place)
    {
        SampleSet sample = new();
        for (int i = 0; i < block.Count; i++)
        {
            block.CopyTo(i, sample);
            for (int c = 0; c < Channel.Count; c++)
            {
                int value = columns[c][i] + (c == Channel.Speed && columns[c][i] != SampleSet.Missing ? SampleBlock.SpeedMiddleTenths : 0);
                Assert.True(sample.Values[c] == value, $"{place}, set {i}, channel {c}");
            }

            Assert.All(columns, column => Assert.Equal(block.Count, column.Length));
        }
    }
}
