using System;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Sessions;

public class SessionDecoderTests
{
    [Fact]
    public void A_whole_session_is_read_with_nothing_lost()
    {
        DecodedSession decoded = SessionDecoder.Decode(RecordedBytes.Session(7, seed: 1).ToArray());

        Assert.True(decoded.HasHeader);
        Assert.Equal(new SessionDamage(), decoded.Damage);
        RecordedSession session = decoded.Session;
        Assert.Equal(RecordedBytes.LoggerId, session.Header.LoggerId);
        Assert.Equal(7u, session.Header.SessionNumber);
        Assert.Equal("sample plan", session.Plan!.Name);
        Assert.Equal(300, session.Samples.Count);
        Assert.Equal(1_000_000 + (299 * 20_000), session.Samples[^1].Microseconds);
        Assert.All(session.Samples, sample => Assert.InRange(sample.SpeedTenths, 7000, 7049));
        Assert.All(session.Samples, sample => Assert.Equal(SampleSet.Missing, sample.ClutchCounts));
        Assert.Equal(Step.IdleNeutral, Assert.Single(session.Holds).Step);
        Assert.Equal(EventKind.GearTag, Assert.Single(session.Events).Kind);
        Assert.Equal(300u, session.End!.SampleSets);
    }

    [Fact]
    public void A_session_cut_anywhere_keeps_its_whole_records()
    {
        RecordedBytes session = RecordedBytes.Session(7, seed: 2);
        byte[] bytes = session.ToArray();
        for (int length = 0; length < bytes.Length; length++)
        {
            DecodedSession decoded = SessionDecoder.Decode(bytes[..length]);
            int whole = session.Starts.Append(bytes.Length).Count(start => start <= length) - 1;
            int blocks = Math.Clamp(whole - 3, 0, 3);
            Assert.Equal(Math.Min(blocks * SampleBlock.Capacity, 300), decoded.Session.Samples.Count);
            Assert.Null(decoded.Session.End);
            Assert.Equal(0, decoded.Damage.Records);
            Assert.Equal(length - (whole > 0 ? session.Starts.Append(bytes.Length).ElementAt(whole) : 0), decoded.Damage.Bytes);
        }
    }

    [Fact]
    public void One_damaged_byte_costs_its_record_and_is_counted()
    {
        RecordedBytes session = RecordedBytes.Session(7, seed: 3);
        byte[] bytes = session.ToArray();
        int inSecondBlock = session.Starts[4] + 100;
        bytes[inSecondBlock] ^= 0x10;

        DecodedSession decoded = SessionDecoder.Decode(bytes);

        Assert.Equal(300 - SampleBlock.Capacity, decoded.Session.Samples.Count);
        Assert.Equal(1, decoded.Damage.Records);
        Assert.Equal(session.Starts[5] - session.Starts[4], decoded.Damage.Bytes);
        Assert.NotNull(decoded.Session.End);
    }

    [Fact]
    public void A_lost_header_leaves_the_session_its_numbers()
    {
        RecordedBytes session = RecordedBytes.Session(7, seed: 4);

        DecodedSession decoded = SessionDecoder.Decode(session.ToArray()[session.Starts[1]..]);

        Assert.False(decoded.HasHeader);
        Assert.Equal(7u, decoded.Session.Header.SessionNumber);
        Assert.Equal(RecordedBytes.BootCount, decoded.Session.Header.BootCount);
        Assert.Equal(1, decoded.Damage.Records);
        Assert.Single(decoded.Session.Holds);
    }

    [Fact]
    public void A_record_of_a_later_version_is_skipped_without_damage()
    {
        byte[] bytes = RecordedBytes.Session(7, seed: 5).Add(new LaterRecord()).ToArray();

        DecodedSession decoded = SessionDecoder.Decode(bytes);

        Assert.Equal(new SessionDamage(UnknownRecords: 1), decoded.Damage);
        Assert.NotNull(decoded.Session.End);
    }

    [Fact]
    public void Records_of_another_session_and_repeated_records_are_not_taken()
    {
        RecordedBytes session = RecordedBytes.Session(7, seed: 6);
        byte[] bytes = session.ToArray();
        byte[] hold = bytes[session.Starts[6]..session.Starts[7]];

        DecodedSession decoded = SessionDecoder.Decode([.. bytes, .. hold, .. RecordedBytes.Session(8, seed: 6).ToArray()]);

        Assert.Single(decoded.Session.Holds);
        Assert.Equal(300, decoded.Session.Samples.Count);
        Assert.Equal(7u, decoded.Session.Header.SessionNumber);
        Assert.True(decoded.Damage.Records > 0);
    }

    [Theory]
    [InlineData(11)]
    [InlineData(12)]
    [InlineData(13)]
    public void Rubbish_is_counted_and_nothing_is_thrown(int seed)
    {
        Random random = new(seed);
        byte[] bytes = new byte[20_000];
        random.NextBytes(bytes);

        DecodedSession decoded = SessionDecoder.Decode(bytes);

        Assert.False(decoded.HasHeader);
        Assert.Empty(decoded.Session.Samples);
        Assert.Equal(bytes.Length, decoded.Damage.Bytes);
    }

    [Fact]
    public void More_records_of_a_kind_than_a_day_and_night_has_count_as_lost()
    {
        RecordedBytes session = new RecordedBytes(7).Add(RecordedBytes.Header(7));
        EventRecord mark = new() { Kind = EventKind.Button };
        for (int i = 0; i < SessionDecoder.MostOfAKind + 3; i++)
        {
            session.Add(mark);
        }

        DecodedSession decoded = SessionDecoder.Decode(session.ToArray());
        Assert.Equal(SessionDecoder.MostOfAKind, decoded.Session.Events.Count);
        Assert.Equal(3, decoded.Damage.Records);
    }

    [Fact]
    public void A_session_of_hours_is_decoded_without_memory_for_its_samples()
    {
        RecordedBytes session = new RecordedBytes(7).Add(RecordedBytes.Header(7));
        SampleBlock block = new();
        block.Begin(20_000);
        SampleSet sample = new();
        while (block.TryAdd(sample))
        {
            sample.Microseconds += 20_000;
        }

        for (int i = 0; i < 10_000; i++)
        {
            block.FirstMicroseconds = i * SampleBlock.Capacity * 20_000L;
            session.Add(block);
        }

        byte[] bytes = session.Add(new SessionEnd()).ToArray();
        long before = GC.GetAllocatedBytesForCurrentThread();
        DecodedSession decoded = SessionDecoder.Decode(bytes);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 3_000_000);
        Assert.Equal((10_000L * SampleBlock.Capacity, ((10_000L * SampleBlock.Capacity) - 1) * 20_000L), (decoded.SampleSets, decoded.LastSampleMicroseconds));
        Assert.NotNull(decoded.Session.End);
        Assert.Equal(10_000 * SampleBlock.Capacity, decoded.Session.Samples.Count);
    }

    private sealed class LaterRecord : IRecord
    {
        public RecordCode Code => (RecordCode)200;

        public void Write(ByteWriter writer) => writer.WriteInt64(1);

        public bool TryRead(ByteReader reader) => false;
    }
}
