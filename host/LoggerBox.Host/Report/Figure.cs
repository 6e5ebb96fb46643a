using System;
using System.Globalization;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Report;

/// <summary>Numbers as they are printed: as many places as the instrument deserves, always with a decimal point.</summary>
public static class Figure
{
    public static string Of(double value, string unit)
    {
        string text = value.ToString("F" + Places(unit).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return IsMinusZero(text) ? text[1..] : text;
    }

    public static string WithUnit(double value, string unit) => Of(value, unit) + " " + Unit(unit);

    /// <summary>A limit as "64 to 76", "at least 64" or "at most 76"; a dash where none is given.</summary>
    public static string Limit(double? min, double? max, string unit) => (min, max) switch
    {
        (double low, double high) => Of(low, unit) + " to " + Of(high, unit),
        (double low, null) => "at least " + Of(low, unit),
        (null, double high) => "at most " + Of(high, unit),
        _ => "no limit given",
    };

    /// <summary>The unit as it is printed on a gauge.</summary>
    public static string Unit(string code) => code == "kgfcm2" ? "kgf/cm²" : code;

    public static string Unit(PressureUnit unit) => Unit(unit.Code());

    public static string Seconds(double seconds) => seconds.ToString("F1", CultureInfo.InvariantCulture);

    private static int Places(string unit) => unit switch
    {
        "bar" or "kgfcm2" or "s" => 2,
        "psi" => 1,
        _ => 0,
    };

    private static bool IsMinusZero(string text) => text[0] == '-' && text.AsSpan(1).TrimStart("0.").IsEmpty;
}
