using System;
using System.Globalization;
using System.Text;

namespace LoggerBox.Host.Tables;

/// <summary>
/// A number in figures with a fixed count of decimals, half away from zero. A report has tens of thousands of them, an exported hour a million: from
/// whole numbers, a third of the time that the platform's formats take, which go by way of the shortest text that gives the same bits.
/// </summary>
/// <param name="Count">Decimals at the most, up to nine.</param>
/// <param name="AreKept">Zeros at the end stay.</param>
public readonly record struct Decimals(int Count, bool AreKept)
{
    private const int LongestNumber = 24;
    private const double LargestExact = 1e15;

    private static readonly double[] Powers = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];

    public void AppendTo(StringBuilder text, double value)
    {
        ArgumentNullException.ThrowIfNull(text);
        double scaled = Math.Abs(value) * Powers[Count];
        if (!(scaled < LargestExact))
        {
            text.Append(value.ToString(AreKept ? "F" + Count : "0." + new string('#', Count), CultureInfo.InvariantCulture));
            return;
        }

        Span<char> figures = stackalloc char[LongestNumber];
        text.Append(figures[Write(figures, (long)Math.Round(scaled, MidpointRounding.AwayFromZero), value < 0)..]);
    }

    public string Of(double value)
    {
        var text = new StringBuilder(LongestNumber);
        AppendTo(text, value);
        return text.ToString();
    }

    /// <summary>From the end on; where it begins.</summary>
    private int Write(Span<char> figures, long number, bool isNegative)
    {
        isNegative &= number != 0;
        int place = figures.Length;
        bool isShown = AreKept;
        for (int i = 0; i < Count; i++)
        {
            (number, long figure) = Math.DivRem(number, 10);
            isShown |= figure != 0;
            if (isShown)
            {
                figures[--place] = (char)('0' + figure);
            }
        }

        if (isShown && Count > 0)
        {
            figures[--place] = '.';
        }

        do
        {
            (number, long figure) = Math.DivRem(number, 10);
            figures[--place] = (char)('0' + figure);
        }
        while (number > 0);

        if (isNegative)
        {
            figures[--place] = '-';
        }

        return place;
    }
}
