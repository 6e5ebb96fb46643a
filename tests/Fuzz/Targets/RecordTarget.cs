using System;
using System.Collections.Generic;
using LoggerBox.Fuzz.Mutations;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Tests;

namespace LoggerBox.Fuzz.Targets;

/// <summary>Below the CRC: a record's body is changed and its CRC made again; what is taken is written and read again the same.</summary>
internal sealed class RecordTarget : FuzzTarget
{
    private static readonly List<IRecord> Records = [.. Examples.Records()];

    private readonly RecordWriter writer = new();

    public override string? Try(Random random)
    {
        byte[] sound = Examples.Bytes(Records[random.Next(Records.Count)]);
        byte[] body = ByteMutation.Of(sound[RecordFormat.HeaderLength..^RecordFormat.CrcLength], random);
        RecordCode code = random.Next(8) == 0 ? (RecordCode)random.Next(256) : (RecordCode)sound[2];
        byte[] bytes = SealedRecord.Of(code, sound, body);
        RecordScan scan = new(bytes, 0, bytes.Length);
        if (body.Length > RecordFormat.MaxBody)
        {
            return scan.MoveNext() ? "a record longer than any" : null;
        }

        if (!scan.MoveNext() || scan.Envelope.RecordLength != bytes.Length)
        {
            return "a record with a sound CRC is not found";
        }

        IRecord? read = Enum.IsDefined(code) ? Examples.Empty(code) : null;
        return read is not null && scan.TryReadBody(read) ? Differs(read) : null;
    }

    private string? Differs(IRecord read)
    {
        if (Again(read) is not IRecord again)
        {
            return $"a {read.Code} that was taken is not taken again:\n{Examples.Text(read)}";
        }

        // U+FFFD takes more bytes than the byte it stands for: a text with it may be cut once.
        string before = Examples.Text(read);
        if (before.Contains('\uFFFD', StringComparison.Ordinal))
        {
            before = Examples.Text(again);
            again = Again(again)!;
        }

        string after = Examples.Text(again);
        return before == after ? null : $"written again it reads otherwise:\n{before}\n{after}";
    }

    private IRecord? Again(IRecord read)
    {
        IRecord again = Examples.Empty(read.Code);
        int length = writer.Write(read, 1, 1, 0);
        RecordScan scan = new(writer.Bytes, 0, length);
        return length > 0 && scan.MoveNext() && scan.TryReadBody(again) ? again : null;
    }
}
