using System;
using System.Globalization;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Traces;

/// <summary>What a transducer's loop current stands for: Low at 4 mA, High at 20 mA (IEC 60381-1), linear between and beyond.</summary>
public sealed record ChannelRange(double Low, double High, PressureUnit Unit)
{
    /// <summary>A count is 1.25 microampere: 100 ohm on a converter of 125 microvolt.</summary>
    public const int CountsPerMilliampere = 800;

    private const int CountsAtFour = 4 * CountsPerMilliampere;
    private const int CountsOfSpan = 16 * CountsPerMilliampere;
    private const double LargestPascal = 100e6;

    /// <param name="text">"0..500psi", "-1..10 bar".</param>
    /// <exception cref="UserErrorException">A usage error: no such range.</exception>
    public static ChannelRange Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        int dots = text.IndexOf("..", StringComparison.Ordinal);
        if (dots > 0 && TryNumber(text[..dots], out double low))
        {
            string rest = text[(dots + 2)..].Trim();
            int letters = rest.AsSpan().IndexOfAnyInRange('A', 'z');
            if (letters > 0 && TryNumber(rest[..letters], out double high) && PressureUnits.TryParse(rest[letters..], out PressureUnit unit))
            {
                return Checked(new ChannelRange(low, high, unit), text);
            }
        }

        throw new UserErrorException($"\"{Excerpt.Of(text)}\" is no range; write it like 0..500psi, with psi, kPa, bar or kgfcm2.", usage: true);
    }

    /// <summary>The zero lies on a whole count: off by half a count of the true one at most, 0.004 % of the range.</summary>
    public ChannelCalibration ToCalibration()
    {
        double span = (High - Low) * Unit.InPascal();
        return new ChannelCalibration
        {
            Kind = ChannelKind.CurrentLoop,
            ZeroCounts = CountsAtFour - (int)Math.Round(Low * Unit.InPascal() * CountsOfSpan / span),
            SpanCounts = CountsOfSpan,
            SpanPascal = (int)Math.Round(span),
        };
    }

    private static ChannelRange Checked(ChannelRange range, string text)
    {
        double span = (range.High - range.Low) * range.Unit.InPascal();
        bool sensible = span >= 1000 && Math.Abs(range.Low) * range.Unit.InPascal() <= LargestPascal && range.High * range.Unit.InPascal() <= LargestPascal;
        return sensible
            ? range
            : throw new UserErrorException($"The range {Excerpt.Of(text)} is none that a transducer has; the pressure at 4 mA comes first and is the lower one.", usage: true);
    }

    private static bool TryNumber(string text, out double value) =>
        double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out value);
}
