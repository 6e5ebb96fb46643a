using System;
using LoggerBox.Fuzz.Mutations;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Tests;

namespace LoggerBox.Fuzz.Targets;

/// <summary>
/// Sample blocks of every kind: read again as they were written; and with bytes changed, read the same whatever lies beside the body in
/// the buffer and whatever the block held before: nothing is read or kept that is not the body's.
/// </summary>
internal sealed class CodecTarget : FuzzTarget
{
    private const int Beside = 64;

    public override string? Try(Random random)
    {
        SampleBlock block = RandomBlock.Of(random);
        byte[] sound = Examples.Bytes(block)[RecordFormat.HeaderLength..^RecordFormat.CrcLength];
        SampleBlock used = RandomBlock.Of(random);
        if (!Reads(used, sound, 0, random.Next(256)) || Examples.Text(used) != Examples.Text(block))
        {
            return "a block reads otherwise than it was written";
        }

        byte[] body = random.Next(4) == 0 ? sound[..random.Next(sound.Length)] : ByteMutation.Of(sound, random);
        SampleBlock fresh = new();
        bool taken = Reads(fresh, body, Beside, 0x00);
        if (taken != Reads(used, body, Beside, 0xFF))
        {
            return "what lies beside a body decides whether it is taken";
        }

        if (!taken)
        {
            return fresh.Count == 0 ? null : "a block that was not taken has sets";
        }

        string content = Examples.Text(fresh);
        return fresh.Count > SampleBlock.Capacity ? "more sets than a block holds"
            : content != Examples.Text(used) ? "what lies beside a body is read"
            : !Reads(used, Examples.Bytes(fresh)[RecordFormat.HeaderLength..^RecordFormat.CrcLength], 0, 0) ? "what was taken is not taken again"
            : content != Examples.Text(used) ? "written again it reads otherwise"
            : null;
    }

    private static bool Reads(SampleBlock into, byte[] body, int beside, int filling)
    {
        byte[] buffer = new byte[body.Length + (2 * beside)];
        Array.Fill(buffer, (byte)filling);
        body.CopyTo(buffer, beside);
        ByteReader reader = new(buffer);
        reader.Restart(beside, body.Length);
        bool taken = into.TryRead(reader);
        return reader.Position <= beside + body.Length ? taken : throw new InvalidOperationException("read past the end of the body");
    }
}
