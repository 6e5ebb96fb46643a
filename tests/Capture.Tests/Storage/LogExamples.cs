using System;
using System.Collections.Generic;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Capture.Tests.Storage;

/// <summary>Small logs for the tests, and their records read back.</summary>
public static class LogExamples
{
    public static SessionHeader Header() => new() { LoggerId = 1, BootCount = 2, SampleIntervalMicroseconds = 20000, PlanName = "Sample truck" };

    public static RecordLog Opened(IRecordStore store)
    {
        RecordLog log = new(store);
        log.Open();
        return log;
    }

    public static void Record(RecordLog log, int events)
    {
        Assert.True(log.BeginSession(Header()));
        for (int i = 0; i < events; i++)
        {
            Assert.True(log.Append(new EventRecord { Microseconds = i, Kind = EventKind.Button, Value = i }));
        }

        Assert.True(log.EndSession(new SessionEnd { Microseconds = events, Reason = SessionEndReason.Button }));
    }

    /// <summary>A full block of noise, always the same: no encoding makes it shorter.</summary>
    public static SampleBlock Block()
    {
        Random random = new(5);
        SampleBlock block = new();
        block.Begin(20000);
        SampleSet sample = new();
        while (block.TryAdd(sample))
        {
            sample.Microseconds += 20000;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                sample.Values[channel] = random.Next(short.MaxValue);
            }
        }

        return block;
    }

    public static byte[] Bytes(RecordLog log, LoggedSession session)
    {
        byte[] bytes = new byte[session.Length];
        Assert.Equal(bytes.Length, log.Read(session, 0, bytes, 0, bytes.Length));
        return bytes;
    }

    /// <summary>The session's records; fails on any that cannot be read.</summary>
    public static List<IRecord> Records(RecordLog log, LoggedSession session)
    {
        byte[] bytes = Bytes(log, session);
        RecordScan scan = new(bytes, 0, bytes.Length);
        List<IRecord> records = [];
        while (scan.MoveNext())
        {
            IRecord record = scan.Envelope.Code switch
            {
                RecordCode.SessionHeader => new SessionHeader(),
                RecordCode.SampleBlock => new SampleBlock(),
                RecordCode.Event => new EventRecord(),
                RecordCode.Hold => new HoldRecord(),
                RecordCode.Dropout => new DropoutRecord(),
                _ => new SessionEnd(),
            };
            Assert.Equal(session.Number, scan.Envelope.SessionNumber);
            Assert.True(scan.TryReadBody(record));
            records.Add(record);
        }

        Assert.Equal(0, scan.UnfinishedBytes);
        return records;
    }
}
