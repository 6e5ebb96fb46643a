using System;
using System.Collections.Generic;
using System.Text;

namespace LoggerBox.Fuzz.Mutations;

/// <summary>Changes of a text by pieces that mean something in it.</summary>
internal static class TextMutation
{
    public static byte[] Of(byte[] sound, string[] pieces, Random random)
    {
        List<byte> bytes = [.. sound];
        for (int change = random.Next(1, 4); change > 0 && bytes.Count > 0; change--)
        {
            int at = random.Next(bytes.Count);
            int count = Math.Min(bytes.Count - at, 1 + random.Next(40));
            switch (random.Next(8))
            {
                case 0:
                    bytes.RemoveRange(at, count);
                    break;
                case 1:
                    bytes.InsertRange(random.Next(bytes.Count), bytes.GetRange(at, count));
                    break;
                case 2:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 3 or 4 or 5:
                    at = bytes.FindIndex(at, one => one is >= (byte)'0' and <= (byte)'9');
                    if (at >= 0)
                    {
                        // Another figure: what is wrong is then seldom the writing, and more often what it says.
                        bytes[at] = (byte)('0' + random.Next(10));
                    }

                    break;
                default:
                    bytes.InsertRange(at, Encoding.UTF8.GetBytes(pieces[random.Next(pieces.Length)]));
                    break;
            }
        }

        return [.. bytes];
    }
}
