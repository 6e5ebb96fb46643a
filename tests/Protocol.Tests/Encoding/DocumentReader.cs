using System;
using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.Protocol.Tests.Encoding;

/// <summary>
/// A reader of encoded blocks written from PROTOCOL.md alone, without the code: floored divisions in place of shifts, bits as text.
/// </summary>
public sealed class DocumentReader
{
    private readonly string bits;
    private int at;

    private DocumentReader(IEnumerable<byte> bytes)
    {
        bits = string.Concat(bytes.Select(value => Convert.ToString(value, 2).PadLeft(8, '0')));
    }

    /// <summary>The four columns of a body with encoded columns and even times.</summary>
    public static int[][] Columns(byte[] body)
    {
        int form = body[0];
        bool wide = (form & 32) != 0;
        int position = wide ? 13 : 8;
        int count = (form & 16) != 0 ? 128 : body[position++];
        DocumentReader reader = new(body.Skip(position));
        int[] modes = [.. Enumerable.Range(0, 4).Select(_ => reader.Number(4))];
        return [.. modes.Select(mode => reader.Column(mode, count))];
    }

    private int[] Column(int mode, int count)
    {
        at += (8 - (at % 8)) % 8;
        if (mode is 0 or 1)
        {
            int[] plain = new int[count];
            for (int i = 0; i < count; i++)
            {
                plain[i] = i > 0 && mode == 1 ? plain[0] : Signed(Number(16));
            }

            return plain;
        }

        return RiceColumn(mode, count);
    }

    private int[] RiceColumn(int mode, int count)
    {
        int k = 2;
        long mean = 64;
        bool missing = true;
        DocumentPrediction? prediction = null;
        int[] values = new int[count];
        for (int i = 0; i < count; i++)
        {
            if (missing && Number(1) == 1)
            {
                values[i] = -32768;
                continue;
            }

            missing = false;
            if (prediction == null)
            {
                values[i] = Signed(Number(16));
                prediction = new DocumentPrediction(mode, values[i]);
                continue;
            }

            int q = Ones();
            long z;
            if (q == 20)
            {
                values[i] = Signed(Number(16));
                missing = values[i] == -32768;
                if (missing)
                {
                    continue;
                }

                z = 20 * (1L << k);
            }
            else
            {
                z = (q * (1L << k)) + Number(k);
                long error = z % 2 == 0 ? z / 2 : -(z + 1) / 2;
                values[i] = Signed((int)((prediction.Value + error) & 0xFFFF));
            }

            prediction.Learn(values[i], z > (5 * DocumentPrediction.Floor(mean, 16)) + 8);
            mean += z - DocumentPrediction.Floor(mean, 16);
            long size = DocumentPrediction.Floor(mean, 16);
            k = size >= 2 * (1L << k) ? Math.Min(k + 1, 15) : size < (1L << k) ? Math.Max(k - 1, 0) : k;
        }

        return values;
    }

    private int Number(int count)
    {
        string digits = bits.Substring(at, count);
        at += count;
        return count == 0 ? 0 : Convert.ToInt32(digits, 2);
    }

    private int Ones()
    {
        int ones = 0;
        while (ones < 20 && Number(1) == 1)
        {
            ones++;
        }

        return ones;
    }

    private static int Signed(int low16) => low16 >= 32768 ? low16 - 65536 : low16;
}
