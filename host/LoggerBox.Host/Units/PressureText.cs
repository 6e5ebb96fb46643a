using System;
using System.Globalization;

namespace LoggerBox.Host.Units;

/// <summary>A pressure as a person writes it: "400psi", "2.5 bar"; zero needs no unit.</summary>
public static class PressureText
{
    private const double LargestPascal = 100e6;

    public static bool TryParse(string text, out double pascal, out PressureUnit? unit)
    {
        ArgumentNullException.ThrowIfNull(text);
        pascal = 0;
        unit = null;
        int letters = text.AsSpan().IndexOfAnyInRange('A', 'z');
        string number = letters < 0 ? text : text[..letters];
        if (!double.TryParse(number.Trim(), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value))
        {
            return false;
        }

        if (letters < 0)
        {
            return value == 0;
        }

        if (!PressureUnits.TryParse(text[letters..], out PressureUnit named))
        {
            return false;
        }

        unit = named;
        pascal = value * named.InPascal();
        return Math.Abs(pascal) <= LargestPascal;
    }
}
