using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Protocol.Tests.Records;

public sealed class RoundTripTests
{
    [Fact]
    public void Every_record_code_has_an_example() =>
        Assert.Equal(Enum.GetValues<RecordCode>(), Examples.Records().Select(record => record.Code).Distinct().Order());

    [Fact]
    public void Every_message_code_has_an_example() =>
        Assert.Equal(Enum.GetValues<MessageCode>().Skip(1), Examples.Messages().Select(message => message.Code).Order());

    [Fact]
    public void A_record_comes_back_field_by_field()
    {
        foreach (IRecord record in Examples.Records())
        {
            IRecord read = Read(Examples.Bytes(record));
            Assert.Equal(Examples.Text(record), Examples.Text(read));
        }
    }

    [Fact]
    public void A_message_comes_back_field_by_field()
    {
        byte[] buffer = new byte[2000];
        foreach (IMessage message in Examples.Messages())
        {
            ByteWriter writer = new(buffer);
            message.Write(writer);
            IMessage read = message is SendPlan ? new SendPlan(new PlanRecord()) : (IMessage)Activator.CreateInstance(message.GetType())!;
            ByteReader reader = new(buffer);
            reader.Restart(0, writer.Position);
            Assert.True(read.TryRead(reader), message.Code.ToString());
            Assert.Equal(0, reader.Remaining);
            Assert.Equal(Examples.Text(message), Examples.Text(read));
        }
    }

    [Fact]
    public void Fields_that_a_later_version_appends_are_left_alone()
    {
        // Whoever appends to a hold writes its last field, too.
        foreach (IRecord record in Examples.Records().Where(record => record is not HoldRecord { Drifting: 0 }))
        {
            IRecord read = Read(Examples.Bytes(new Appended(record)));
            Assert.Equal(Examples.Text(record), Examples.Text(read));
        }
    }

    [Fact]
    public void A_body_one_byte_short_is_not_taken()
    {
        byte[] buffer = new byte[RecordFormat.MaxBody];
        foreach (IRecord record in Examples.Records())
        {
            ByteWriter writer = new(buffer);
            record.Write(writer);
            int needed = writer.Position - (record is HoldRecord { Drifting: not 0 } ? 1 : 0);
            for (int length = 0; length < needed; length++)
            {
                ByteReader reader = new(buffer);
                reader.Restart(0, length);
                Assert.False(Examples.Empty(record.Code).TryRead(reader), $"{record.Code}, {length} of {writer.Position} bytes");
            }
        }
    }

    [Fact]
    public void A_hold_as_long_as_it_used_to_be_says_nothing_of_a_drift()
    {
        byte[] buffer = new byte[RecordFormat.MaxBody];
        ByteWriter writer = new(buffer);
        new HoldRecord { Drifting = 1 }.Write(writer);
        ByteReader reader = new(buffer);
        reader.Restart(0, writer.Position - 1);
        HoldRecord read = new() { Drifting = 2 };
        Assert.True(read.TryRead(reader));
        Assert.Equal(0, read.Drifting);
    }

    [Fact]
    public void The_longest_block_fits_into_a_record()
    {
        SampleBlock block = Examples.Block(0, SampleBlock.Capacity);
        Assert.True(block.IsFull);
        Assert.Equal(Examples.Text(block), Examples.Text(Read(Examples.Bytes(block))));
    }

    [Fact]
    public void A_set_that_comes_late_begins_another_block()
    {
        SampleBlock block = Examples.Block(20000, 5);
        SampleSet late = new() { Microseconds = 1_000_000 + 5 * 20000 + 1 };
        Assert.False(block.TryAdd(late));
        Assert.Equal(5, block.Count);
    }

    [Theory]
    [InlineData("Größe 12", "Größe 12")]
    [InlineData("\U0001F69C truck", "\U0001F69C truck")]
    [InlineData("éééééééééééééééééééééééééééééé", "éééééééééééééééééééééééé")]
    public void A_text_is_cut_between_characters(string written, string read)
    {
        PlanRecord back = (PlanRecord)Read(Examples.Bytes(new PlanRecord { Name = written }));
        Assert.Equal(read, back.Name);
    }

    [Fact]
    public void Half_a_surrogate_pair_is_written_as_a_replacement_character()
    {
        PlanRecord back = (PlanRecord)Read(Examples.Bytes(new PlanRecord { Name = "\uD800 half" }));
        Assert.Equal("\uFFFD half", back.Name);
    }

    private static IRecord Read(byte[] bytes)
    {
        RecordReader reader = new(bytes);
        Envelope envelope = new();
        Assert.Equal(EnvelopeResult.Complete, reader.TryReadEnvelope(0, bytes.Length, envelope));
        Assert.Equal((7u, (ushort)2, 3u), (envelope.SessionNumber, envelope.BootCount, envelope.Sequence));
        IRecord record = Examples.Empty(envelope.Code);
        Assert.True(reader.TryReadBody(envelope, record), envelope.Code.ToString());
        return record;
    }

    private sealed class Appended(IRecord known) : IRecord
    {
        public RecordCode Code => known.Code;

        public void Write(ByteWriter writer)
        {
            known.Write(writer);
            writer.WriteInt64(0x1122334455667788);
        }

        public bool TryRead(ByteReader reader) => throw new NotSupportedException();
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(49000, 49000)]
    [InlineData(65534, 65534)]
    [InlineData(65535, SampleSet.Missing)]
    [InlineData(-1, SampleSet.Missing)]
    public void A_speed_that_the_column_cannot_hold_is_missing_and_never_another_speed(int tenths, int read)
    {
        SampleBlock block = new();
        block.Begin(20000);
        SampleSet sample = new();
        sample.Values[Channel.Speed] = tenths;
        Assert.True(block.TryAdd(sample));
        block.CopyTo(0, sample);
        Assert.Equal(read, sample.Values[Channel.Speed]);
    }
}
