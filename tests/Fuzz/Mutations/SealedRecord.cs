using System;
using System.Buffers.Binary;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Fuzz.Mutations;

/// <summary>An envelope that is right, round a body that is not.</summary>
internal static class SealedRecord
{
    /// <param name="sound">A record whose numbers are taken.</param>
    public static byte[] Of(RecordCode code, byte[] sound, byte[] body)
    {
        byte[] bytes = new byte[RecordFormat.EnvelopeLength + body.Length];
        sound.AsSpan(0, RecordFormat.HeaderLength).CopyTo(bytes);
        bytes[2] = (byte)code;
        BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(4), (ushort)body.Length);
        body.CopyTo(bytes, RecordFormat.HeaderLength);
        int end = bytes.Length - RecordFormat.CrcLength;
        BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(end), Crc32.Of(bytes, 0, end));
        return bytes;
    }
}
