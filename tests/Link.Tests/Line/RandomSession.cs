using System;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Link.Tests.Line;

/// <summary>A session exactly as long as is wanted, of records that nothing can make shorter: random bytes under a code that no reader knows.</summary>
public static class RandomSession
{
    public const uint LoggerId = 0xB0A7;

    private const int LongestNoise = 1000;

    public static RecordLog Log(int length, int seed, ushort bootCount = 1)
    {
        Random random = new(seed);
        SessionHeader header = new() { LoggerId = LoggerId, BootCount = bootCount, SampleIntervalMicroseconds = 20_000 };
        SessionEnd end = new() { Microseconds = 1_000_000, Reason = SessionEndReason.Button };
        RecordLog log = new(new MemoryStore((length * 5 / 4) + 65_536));
        log.Open();
        log.BeginSession(header);
        int left = length - LengthOf(header) - LengthOf(end);
        while (left > 0)
        {
            // The last but one leaves enough for the envelope of the last.
            int noise = Math.Min(LongestNoise, left - RecordFormat.EnvelopeLength);
            int rest = left - noise - RecordFormat.EnvelopeLength;
            noise -= rest > 0 && rest < RecordFormat.EnvelopeLength ? RecordFormat.EnvelopeLength : 0;
            log.Append(new Noise(random, noise));
            left -= noise + RecordFormat.EnvelopeLength;
        }

        log.EndSession(end);
        return log.Sessions.Count == 1 && log.Sessions[0].Length == length
            ? log
            : throw new InvalidOperationException($"The log holds {log.Sessions[0].Length} bytes, not {length}.");
    }

    public static byte[] BytesOf(RecordLog log)
    {
        byte[] bytes = new byte[log.Sessions[0].Length];
        log.Read(log.Sessions[0], 0, bytes, 0, bytes.Length);
        return bytes;
    }

    private static int LengthOf(IRecord record) => new RecordWriter().Write(record, 1, 1, 0);

    private sealed class Noise : IRecord
    {
        private readonly byte[] bytes;

        public Noise(Random random, int length)
        {
            bytes = new byte[length];
            random.NextBytes(bytes);
        }

        public RecordCode Code => (RecordCode)0xEE;

        public void Write(ByteWriter writer) => writer.WriteBytes(bytes, 0, bytes.Length);

        public bool TryRead(ByteReader reader) => false;
    }
}
