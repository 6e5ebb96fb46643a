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

    [Theory]
    [InlineData("offset", 1 << 23)]
    [InlineData("offset", int.MinValue)]
    [InlineData("start", -1)]
    [InlineData("start", int.MinValue)]
    [InlineData("index", 255)]
    [InlineData("index", 3)]
    [InlineData("used", 481)]
    public void A_page_header_made_up_with_its_CRC_says_no_more_than_its_pages_hold(string field, int value)
    {
        const int Capacity = 100_000;
        MemoryStore store = new(Capacity);
        RecordLog log = LogExamples.Opened(store);
        Assert.True(log.BeginSession(LogExamples.Header()) && log.Append(LogExamples.Block()) && log.Append(LogExamples.Block()));
        int pages = (int)store.Length / store.PageLength;
        for (int page = 0; page < pages; page++)
        {
            MemoryStore forged = Forged(store, Capacity, page, field, value);
            RecordLog again = LogExamples.Opened(forged);
            for (int i = 0; i < again.Sessions.Count; i++)
            {
                LoggedSession session = again.Sessions[i];
                Assert.InRange(session.StartPage, 0, session.LastPage);
                Assert.InRange(session.Length, 1u, (uint)((session.LastPage - session.StartPage + 1) * (forged.PageLength - PageHeader.Length)));
                LogExamples.Bytes(again, session);
            }

            LogExamples.Record(again, events: 1);
        }
    }

    private static MemoryStore Forged(MemoryStore store, int capacity, int page, string field, int value)
    {
        byte[] image = new byte[store.Length];
        store.Read(0, image, 0, image.Length);
        PageHeader header = new();
        Assert.True(header.TryRead(image, page * store.PageLength, page));
        switch (field)
        {
            case "offset":
                header.SessionOffset = (uint)value;
                break;
            case "start":
                header.SessionStart = value;
                break;
            case "index":
                header.IndexInBlock = value;
                break;
            default:
                header.Used = value;
                break;
        }

        header.Write(image, page * store.PageLength, page);
        MemoryStore forged = new(capacity);
        Assert.True(forged.Write(0, image, 0, image.Length));
        return forged;
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
