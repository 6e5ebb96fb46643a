using System;
using System.Collections.Generic;
using LoggerBox.Host.Archive;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Benchmarks.StartUp;

/// <summary>An archive of a year or so: fifty sessions of three minutes.</summary>
internal static class FiftySessions
{
    private const int Sets = 9_000;
    private const int IntervalMicroseconds = 20_000;

    public static void Write(string path)
    {
        using ArchiveFile archive = ArchiveFile.Open(path);
        for (uint number = 1; number <= 50; number++)
        {
            archive.Sessions.Add(Session(number), SessionOrigin.Fetched, "bench", DateTimeOffset.UtcNow);
        }
    }

    private static byte[] Session(uint number)
    {
        RecordWriter writer = new();
        List<byte> bytes = [];
        uint sequence = 0;
        void Append(IRecord record) => bytes.AddRange(writer.Bytes.AsSpan(0, writer.Write(record, number, 1, sequence++)));
        Append(new SessionHeader { LoggerId = 1, BootCount = 1, SessionNumber = number, StartUtcSeconds = 1_790_000_000 + (number * 86_400) });
        SampleBlock block = new();
        SampleSet sample = new();
        Random noise = new((int)number);
        block.Begin(IntervalMicroseconds);
        for (int i = 0; i < Sets; i++)
        {
            sample.Microseconds = i * (long)IntervalMicroseconds;
            Array.ConvertAll(sample.Values, _ => 1000 + noise.Next(6)).CopyTo(sample.Values, 0);
            if (!block.TryAdd(sample))
            {
                Append(block);
                block.Begin(IntervalMicroseconds);
                block.TryAdd(sample);
            }
        }

        Append(block);
        Append(new SessionEnd { Microseconds = Sets * (long)IntervalMicroseconds, Reason = SessionEndReason.Button });
        return [.. bytes];
    }
}
