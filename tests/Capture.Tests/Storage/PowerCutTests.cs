using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;
using LoggerBox.TruckSimulator.Storage;
using Xunit;

namespace LoggerBox.Capture.Tests.Storage;

/// <summary>The log's bytes cut or damaged at every place, opened by the real code.</summary>
public sealed class PowerCutTests
{
    private const int Seed = 5;

    [Fact]
    public void A_cut_at_any_byte_loses_at_most_the_record_that_was_being_written()
    {
        byte[] whole = TwoSessions(out long[] recordEnds);
        for (int cut = 0; cut <= whole.Length; cut++)
        {
            MemoryStore store = Store(whole, cut);
            RecordLog log = LogExamples.Opened(store);
            long kept = recordEnds.Where(end => end <= cut).DefaultIfEmpty(0).Max();
            Assert.Equal(kept, store.Length);
            Assert.Equal(cut - kept, log.DroppedTailBytes);
            Assert.Equal(0, log.DamagedBytes);
            Assert.Equal(kept, Enumerable.Range(0, log.Sessions.Count).Sum(i => log.Sessions[i].Length));
            AssertSessionsAre(whole, log);
        }
    }

    [Fact]
    public void After_a_cut_at_any_byte_the_next_session_is_recorded_and_found()
    {
        byte[] whole = TwoSessions(out _);
        for (int cut = 0; cut <= whole.Length; cut += 7)
        {
            MemoryStore store = Store(whole, cut);
            RecordLog log = LogExamples.Opened(store);
            int sessions = log.Sessions.Count;
            LogExamples.Record(log, events: 2);
            RecordLog again = LogExamples.Opened(store);
            Assert.Equal(sessions + 1, again.Sessions.Count);
            Assert.Equal(4, LogExamples.Records(again, again.Sessions[sessions]).Count);
            Assert.Equal(0, again.DamagedBytes + again.DroppedTailBytes);
        }
    }

    [Fact]
    public void A_damaged_byte_anywhere_is_a_gap_and_gives_nothing_wrong()
    {
        byte[] whole = TwoSessions(out long[] recordEnds);
        Random random = new(Seed);
        for (int at = 0; at < whole.Length; at++)
        {
            byte[] damaged = [.. whole];
            damaged[at] ^= (byte)random.Next(1, 256);
            RecordLog log = LogExamples.Opened(Store(damaged, damaged.Length));
            long hit = recordEnds.First(end => end > at);
            long hitStart = recordEnds.Where(end => end <= at).DefaultIfEmpty(0).Max();
            long lost = log.DamagedBytes + log.DroppedTailBytes;
            Assert.True(lost == hit - hitStart, $"seed {Seed}, byte {at}: {lost} bytes lost");
            Assert.Equal(2, log.Sessions.Count);
            AssertSessionsAre(damaged, log);
        }
    }

    [Fact]
    public void A_store_full_of_something_else_is_no_session()
    {
        byte[] noise = new byte[20_000];
        new Random(Seed).NextBytes(noise);
        MemoryStore store = Store(noise, noise.Length);
        RecordLog log = LogExamples.Opened(store);
        Assert.Equal(0, log.Sessions.Count);
        Assert.Equal(noise.Length, log.DroppedTailBytes);
        LogExamples.Record(log, events: 1);
        Assert.Equal(1, LogExamples.Opened(store).Sessions.Count);
    }

    [Fact]
    public void A_store_that_fails_half_way_takes_nothing_more_until_it_is_opened_again()
    {
        FailingStore store = new(limit: 700);
        RecordLog log = LogExamples.Opened(store);
        Assert.True(log.BeginSession(LogExamples.Header()));
        int stored = 0;
        while (log.Append(new EventRecord()))
        {
            stored++;
        }

        store.Limit = 100_000;
        Assert.False(log.EndSession(new SessionEnd()));
        Assert.Equal(stored + 1, LogExamples.Records(log, log.Sessions[0]).Count);
        RecordLog again = LogExamples.Opened(store);
        Assert.Equal(stored + 1, LogExamples.Records(again, again.Sessions[0]).Count);
        LogExamples.Record(again, events: 1);
    }

    [Fact]
    public void A_file_cut_short_is_recovered_as_a_memory_is()
    {
        string path = Path.Combine(Path.GetTempPath(), "loggerbox-" + Guid.NewGuid().ToString("N"));
        try
        {
            byte[] whole = TwoSessions(out long[] recordEnds);
            File.WriteAllBytes(path, whole[..^3]);
            using (FileStore store = new(path, 1_000_000))
            {
                RecordLog log = LogExamples.Opened(store);
                Assert.Equal(recordEnds[^2], store.Length);
                AssertSessionsAre(whole, log);
                LogExamples.Record(log, events: 3);
            }

            using FileStore reopened = new(path, 1_000_000);
            RecordLog again = LogExamples.Opened(reopened);
            Assert.Equal(3, again.Sessions.Count);
            Assert.Equal(5, LogExamples.Records(again, again.Sessions[2]).Count);
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static void AssertSessionsAre(byte[] whole, RecordLog log)
    {
        for (int i = 0; i < log.Sessions.Count; i++)
        {
            LoggedSession session = log.Sessions[i];
            byte[] expected = whole.AsSpan((int)session.StartOffset, (int)session.Length).ToArray();
            Assert.Equal(expected, LogExamples.Bytes(log, session));
            LogExamples.Records(log, session);
        }
    }

    private static byte[] TwoSessions(out long[] recordEnds)
    {
        MemoryStore store = new(100_000);
        RecordLog log = LogExamples.Opened(store);
        List<long> ends = [];
        for (int session = 0; session < 2; session++)
        {
            Assert.True(log.BeginSession(LogExamples.Header()));
            ends.Add(store.Length);
            foreach (IRecord record in (IRecord[])[new EventRecord { Value = 5 }, LogExamples.Block(), new HoldRecord(), new EventRecord()])
            {
                Assert.True(log.Append(record));
                ends.Add(store.Length);
            }

            Assert.True(log.EndSession(new SessionEnd()));
            ends.Add(store.Length);
        }

        recordEnds = [.. ends];
        byte[] whole = new byte[store.Length];
        store.Read(0, whole, 0, whole.Length);
        return whole;
    }

    private static MemoryStore Store(byte[] bytes, int length)
    {
        MemoryStore store = new(100_000);
        Assert.True(store.Append(bytes, 0, length));
        return store;
    }

    /// <summary>Writes half of what does not fit, and says that it failed.</summary>
    private sealed class FailingStore(int limit) : IRecordStore
    {
        private readonly MemoryStore store = new(1_000_000);

        public int Limit { get; set; } = limit;

        public long Capacity => store.Capacity;

        public long Length => store.Length;

        public int Read(long offset, byte[] buffer, int bufferOffset, int count) => store.Read(offset, buffer, bufferOffset, count);

        public bool Append(byte[] buffer, int offset, int count)
        {
            bool fits = store.Length + count <= Limit;
            return store.Append(buffer, offset, fits ? count : count / 2) && fits;
        }

        public void Truncate(long length) => store.Truncate(length);
    }
}
