using System;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Capture.Tests.Storage;

/// <summary>Cards that fail, or come from elsewhere.</summary>
public sealed class SpoiledCardTests
{
    private const int Seed = 5;

    [Fact]
    public void A_card_full_of_something_else_is_no_session_and_can_be_used()
    {
        byte[] noise = new byte[40_960];
        new Random(Seed).NextBytes(noise);
        MemoryStore store = new(100_000);
        Assert.True(store.Write(0, noise, 0, noise.Length));
        RecordLog log = LogExamples.Opened(store);
        Assert.Equal(0, log.Sessions.Count);
        LogExamples.Record(log, events: 1);
        LogExamples.Record(log, events: 2);
        RecordLog again = LogExamples.Opened(store);
        Assert.Equal(2, again.Sessions.Count);
        Assert.Equal(4, LogExamples.Records(again, again.Sessions[1]).Count);
    }

    [Fact]
    public void A_card_that_fails_half_way_takes_nothing_more_until_it_is_opened_again()
    {
        FailingStore store = new(limit: 8 * 512);
        RecordLog log = LogExamples.Opened(store);
        Assert.True(log.BeginSession(LogExamples.Header()));
        int stored = 0;
        while (log.Append(LogExamples.Block()))
        {
            stored++;
        }

        Assert.True(stored > 0);
        store.Limit = 100_000;
        Assert.False(log.EndSession(new SessionEnd()));
        Assert.Equal(stored + 1, LogExamples.Records(log, log.Sessions[0]).Count);
        RecordLog again = LogExamples.Opened(store);

        // The half that was written may hold the whole block: it was not answered for, and is not wrong.
        Assert.InRange(LogExamples.Records(again, again.Sessions[0]).Count, stored + 1, stored + 2);
        LogExamples.Record(again, events: 1);
    }

    [Fact]
    public void Damage_is_a_gap_of_zeros_of_just_the_length_that_was_lost()
    {
        MemoryStore store = new(100_000);
        RecordLog log = LogExamples.Opened(store);
        Assert.True(log.BeginSession(LogExamples.Header()));
        Assert.True(log.Append(LogExamples.Block()) && log.Append(LogExamples.Block()) && log.EndSession(new SessionEnd()));
        byte[] whole = LogExamples.Bytes(log, log.Sessions[0]);

        // The second page holds the first bytes of the first block of samples.
        Assert.True(store.Write(512, new byte[512], 0, 512));
        RecordLog again = LogExamples.Opened(store);
        byte[] damaged = LogExamples.Bytes(again, again.Sessions[0]);
        Assert.Equal(whole.Length, damaged.Length);
        RecordScan scan = new(damaged, 0, damaged.Length);
        int records = 0;
        while (scan.MoveNext())
        {
            records++;
        }

        Assert.Equal(3, records);
        Assert.True(scan.DamagedBytes > 0);
        Assert.Equal(0, scan.UnfinishedBytes);
    }

    /// <summary>Writes half of what is beyond its limit, and says that it failed.</summary>
    private sealed class FailingStore(int limit) : IRecordStore
    {
        private readonly MemoryStore store = new(1_000_000);

        public int Limit { get; set; } = limit;

        public int PageLength => store.PageLength;

        public long Capacity => store.Capacity;

        public long Length => store.Length;

        public int Read(long offset, byte[] buffer, int bufferOffset, int count) => store.Read(offset, buffer, bufferOffset, count);

        public bool Write(long offset, byte[] buffer, int bufferOffset, int count)
        {
            bool fits = offset + count <= Limit;
            return store.Write(offset, buffer, bufferOffset, fits ? count : count / 2) && fits;
        }
    }
}
