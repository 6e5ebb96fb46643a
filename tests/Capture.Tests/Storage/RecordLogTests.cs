using System;
using System.Collections.Generic;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Capture.Tests.Storage;

public sealed class RecordLogTests
{
    [Fact]
    public void Sessions_are_found_again_after_a_restart()
    {
        MemoryStore store = new(100_000);
        RecordLog log = LogExamples.Opened(store);
        LogExamples.Record(log, events: 5);
        LogExamples.Record(log, events: 3);

        RecordLog again = LogExamples.Opened(store);
        Assert.Equal(2, again.Sessions.Count);
        Assert.Equal(1u, again.Sessions[0].Number);
        Assert.Equal(2u, again.Sessions[1].Number);
        Assert.True(again.Sessions[0].Ended && again.Sessions[1].Ended);
        Assert.Equal(LogExamples.Bytes(log, log.Sessions[0]), LogExamples.Bytes(again, again.Sessions[0]));
        Assert.Equal(LogExamples.Bytes(log, log.Sessions[1]), LogExamples.Bytes(again, again.Sessions[1]));
        Assert.Equal(2, again.Sessions.HighestBootCount);
        Assert.Equal(0, again.UnfinishedBytes + again.UnreadablePages);
    }

    [Fact]
    public void Number_goes_on_after_a_restart()
    {
        MemoryStore store = new(100_000);
        LogExamples.Record(LogExamples.Opened(store), events: 1);
        SessionHeader header = LogExamples.Header();
        Assert.True(LogExamples.Opened(store).BeginSession(header));
        Assert.Equal(2u, header.SessionNumber);
    }

    [Fact]
    public void A_full_store_stops_the_session_and_says_so()
    {
        MemoryStore store = new(16_000);
        RecordLog log = LogExamples.Opened(store);
        Assert.True(log.BeginSession(LogExamples.Header()));
        int stored = 0;
        while (log.Append(new EventRecord { Microseconds = stored }))
        {
            stored++;
        }

        Assert.True(log.IsFull);
        Assert.False(log.Append(new EventRecord()));
        Assert.True(log.EndSession(new SessionEnd { Microseconds = 9, Reason = SessionEndReason.Button }));

        List<IRecord> records = LogExamples.Records(log, log.Sessions[0]);
        Assert.Equal(stored + 3, records.Count);
        Assert.Equal(DropoutReason.StoreFull, Assert.IsType<DropoutRecord>(records[^2]).Reason);
        Assert.Equal(SessionEndReason.StoreFull, Assert.IsType<SessionEnd>(records[^1]).Reason);
        Assert.False(log.BeginSession(LogExamples.Header()));
        Assert.Equal(records.Count, LogExamples.Records(log, log.Sessions[0]).Count);
    }

    [Fact]
    public void A_full_store_still_takes_the_confirmation_and_then_a_new_session()
    {
        MemoryStore store = new(16_000);
        RecordLog log = LogExamples.Opened(store);
        Assert.True(log.BeginSession(LogExamples.Header()));
        while (log.Append(new EventRecord()))
        {
        }

        Assert.True(log.EndSession(new SessionEnd()));
        Assert.True(log.Confirm(log.Sessions[0], 0));

        RecordLog again = LogExamples.Opened(store);
        Assert.True(again.Sessions[0].Confirmed);
        SessionHeader header = LogExamples.Header();
        Assert.True(again.BeginSession(header));
        Assert.Equal(2u, header.SessionNumber);
        Assert.Equal(1, again.Sessions.Count);
    }

    [Fact]
    public void One_unconfirmed_session_keeps_all_of_the_log()
    {
        MemoryStore store = new(16_000);
        RecordLog log = LogExamples.Opened(store);
        LogExamples.Record(log, events: 20);
        LogExamples.Record(log, events: 40);
        Assert.True(log.Confirm(log.Sessions[0], 0));
        long before = store.Length;
        while (log.BeginSession(LogExamples.Header()))
        {
            log.EndSession(new SessionEnd());
        }

        Assert.True(store.Length >= before);
        Assert.Equal(1u, log.Sessions[0].Number);
        Assert.Equal(42, LogExamples.Records(log, log.Sessions[1]).Count);
    }

    [Fact]
    public void No_confirmation_while_a_session_is_recorded()
    {
        MemoryStore store = new(100_000);
        RecordLog log = LogExamples.Opened(store);
        LogExamples.Record(log, events: 1);
        Assert.True(log.BeginSession(LogExamples.Header()));
        long before = store.Length;
        Assert.False(log.Confirm(log.Sessions[0], 0));
        Assert.Equal(before, store.Length);
    }

    [Fact]
    public void A_range_ends_with_its_session()
    {
        RecordLog log = LogExamples.Opened(new MemoryStore(100_000));
        LogExamples.Record(log, events: 5);
        LogExamples.Record(log, events: 5);
        LoggedSession first = log.Sessions[0];
        byte[] buffer = new byte[4096];
        Assert.Equal((int)first.Length - 7, log.Read(first, 7, buffer, 0, buffer.Length));
        Assert.Equal(0, log.Read(first, first.Length, buffer, 0, buffer.Length));
        Assert.Equal(0, log.Read(first, uint.MaxValue, buffer, 0, buffer.Length));
    }

    [Fact]
    public void Appending_allocates_nothing()
    {
        RecordLog log = LogExamples.Opened(new MemoryStore(60_000));
        Assert.True(log.BeginSession(LogExamples.Header()));
        EventRecord moment = new();
        HoldRecord hold = new();
        SampleBlock block = LogExamples.Block();
        Assert.True(log.Append(moment) && log.Append(hold) && log.Append(block));

        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 20; i++)
        {
            log.Append(moment);
            log.Append(hold);
            log.Append(block);
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.False(log.IsFull);
    }
}
