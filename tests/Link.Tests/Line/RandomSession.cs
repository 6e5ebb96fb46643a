using System;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Link.Tests.Line;

/// <summary>
/// A session as long as is wanted that nothing can make shorter: a header, random bytes, an end. Between whole records a log takes the
/// random bytes for damage, which it keeps and sends as it is.
/// </summary>
public static class RandomSession
{
    public const uint LoggerId = 0xB0A7;
    public const uint Number = 1;

    public static RecordLog Log(int length, int seed, ushort bootCount = 1)
    {
        RecordWriter writer = new();
        byte[] bytes = new byte[length];
        new Random(seed).NextBytes(bytes);
        SessionHeader header = new() { LoggerId = LoggerId, BootCount = bootCount, SessionNumber = Number, SampleIntervalMicroseconds = 20_000 };
        writer.Bytes.AsSpan(0, writer.Write(header, Number, bootCount, 0)).CopyTo(bytes);
        int end = writer.Write(new SessionEnd { Microseconds = 1_000_000, Reason = SessionEndReason.Button }, Number, bootCount, 1);
        writer.Bytes.AsSpan(0, end).CopyTo(bytes.AsSpan(length - end));

        // Room for the note that the host has it.
        MemoryStore store = new(length + 4096);
        store.Append(bytes, 0, length);
        RecordLog log = new(store);
        log.Open();
        return log.Sessions.Count == 1 && log.Sessions[0].Length == length
            ? log
            : throw new InvalidOperationException("The log does not hold the session as it was written.");
    }

    public static byte[] BytesOf(RecordLog log)
    {
        byte[] bytes = new byte[log.Sessions[0].Length];
        log.Read(log.Sessions[0], 0, bytes, 0, bytes.Length);
        return bytes;
    }
}
