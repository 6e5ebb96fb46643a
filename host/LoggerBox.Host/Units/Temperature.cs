using System.Globalization;

namespace LoggerBox.Host.Units;

/// <summary>Degrees Celsius are stored; both scales are shown, since manuals print either.</summary>
public static class Temperature
{
    /// <summary>NIST SP 811 (2008), Appendix B.9: t/°C = (t/°F - 32) / 1.8, exact.</summary>
    public static double Fahrenheit(double celsius) => celsius * 1.8 + 32;

    /// <summary>"82 °C (180 °F)".</summary>
    public static string Format(double celsius) => string.Create(CultureInfo.InvariantCulture, $"{celsius:0} °C ({Fahrenheit(celsius):0} °F)");
}
