using System;
using System.Buffers.Text;

namespace LoggerBox.Host.Traces;

/// <summary>Decimal numbers with a point from UTF-8 bytes, without a string per cell: a trace of 20 MB has millions of them.</summary>
internal static class DecimalNumber
{
    /// <summary>Up to here a mantissa and a power of ten are exact in a double, so that their quotient is rounded once, correctly.</summary>
    private const long LargestExact = 1L << 53;

    private static readonly double[] PowersOfTen =
        [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

    /// <returns>False for anything but a finite number: text, nan, inf, a decimal comma, nothing.</returns>
    public static bool TryParse(ReadOnlySpan<byte> cell, out double value)
    {
        bool negative = cell.Length > 0 && cell[0] == '-';
        ReadOnlySpan<byte> digits = cell.Length > 0 && cell[0] is (byte)'-' or (byte)'+' ? cell[1..] : cell;
        if (TryPlain(digits, out value))
        {
            value = negative ? -value : value;
            return true;
        }

        bool startsLikeANumber = digits.Length > 0 && (char.IsAsciiDigit((char)digits[0]) || digits[0] == '.');
        if (startsLikeANumber && Utf8Parser.TryParse(digits, out value, out int used) && used == digits.Length && double.IsFinite(value))
        {
            value = negative ? -value : value;
            return true;
        }

        value = 0;
        return false;
    }

    private static bool TryPlain(ReadOnlySpan<byte> digits, out double value)
    {
        long mantissa = 0;
        int point = -1;
        value = 0;
        if (digits.Length is 0 or > 16)
        {
            return false;
        }

        for (int i = 0; i < digits.Length; i++)
        {
            int digit = digits[i] - '0';
            if ((uint)digit <= 9)
            {
                mantissa = mantissa * 10 + digit;
            }
            else if (digits[i] == '.' && point < 0 && digits.Length > 1)
            {
                point = i;
            }
            else
            {
                return false;
            }
        }

        if (mantissa > LargestExact)
        {
            return false;
        }

        value = point < 0 ? mantissa : mantissa / PowersOfTen[digits.Length - 1 - point];
        return true;
    }
}
