using System;
using System.Buffers.Binary;
using System.Numerics;

namespace LoggerBox.Host.Sessions;

/// <summary>CRC-32C of a session, as the logger computes it, or of a file: by the processor's own instruction for it where it has one.</summary>
public static class Castagnoli
{
    /// <summary>What a running value starts from.</summary>
    public const uint Start = 0;

    public static uint Of(ReadOnlySpan<byte> bytes) => Append(Start, bytes);

    /// <summary>Of what gave <paramref name="crc"/>, followed by these bytes.</summary>
    public static uint Append(uint crc, ReadOnlySpan<byte> bytes)
    {
        uint register = ~crc;
        for (; bytes.Length >= sizeof(ulong); bytes = bytes[sizeof(ulong)..])
        {
            register = BitOperations.Crc32C(register, BinaryPrimitives.ReadUInt64LittleEndian(bytes));
        }

        foreach (byte one in bytes)
        {
            register = BitOperations.Crc32C(register, one);
        }

        return ~register;
    }
}
