using System;
using System.Collections.Generic;

namespace LoggerBox.Fuzz.Mutations;

/// <summary>Changes of bytes that nobody meant.</summary>
internal static class ByteMutation
{
    private static readonly byte[] Edges = [0x00, 0x01, 0x7F, 0x80, 0xFE, 0xFF];

    /// <summary>One to four changes; bytes may be taken out, put in or repeated.</summary>
    public static byte[] Of(byte[] sound, Random random, int most = 4)
    {
        List<byte> bytes = [.. sound];
        for (int change = random.Next(1, most + 1); change > 0 && bytes.Count > 0; change--)
        {
            int at = random.Next(bytes.Count);
            int count = Math.Min(bytes.Count - at, 1 + random.Next(1 << random.Next(8)));
            switch (random.Next(5))
            {
                case 0:
                    bytes.RemoveRange(at, count);
                    break;
                case 1:
                    bytes.InsertRange(random.Next(bytes.Count), bytes.GetRange(at, count));
                    break;
                default:
                    bytes[at] = Other(random);
                    break;
            }
        }

        return [.. bytes];
    }

    /// <summary>Changes bytes where they are; what was read stays as long.</summary>
    public static void InPlace(Span<byte> bytes, Random random, int most = 4)
    {
        for (int change = random.Next(1, most + 1); change > 0 && bytes.Length > 0; change--)
        {
            int at = random.Next(bytes.Length);
            int count = random.Next(3) == 0 ? Math.Min(bytes.Length - at, 1 + random.Next(8)) : 1;
            byte value = Other(random);
            for (int i = 0; i < count; i++)
            {
                bytes[at + i] = count > 1 ? value : (byte)(random.Next(2) == 0 ? value : bytes[at] ^ (1 << random.Next(8)));
            }
        }
    }

    public static byte[] Noise(Random random, int most)
    {
        byte[] noise = new byte[random.Next(most)];
        random.NextBytes(noise);
        return noise;
    }

    private static byte Other(Random random) => random.Next(2) == 0 ? Edges[random.Next(Edges.Length)] : (byte)random.Next(256);
}
