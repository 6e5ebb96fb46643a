using System;
using System.Globalization;

namespace LoggerBox.Host.Units;

/// <summary>Conversion factors after NIST SP 811 (2008), Appendix B; all four are exact by definition.</summary>
public static class PressureUnits
{
    private static readonly (PressureUnit Unit, string Code, double Pascal)[] Table =
    [
        (PressureUnit.Psi, "psi", 4.4482216152605 / (0.0254 * 0.0254)),
        (PressureUnit.Kilopascal, "kPa", 1000.0),
        (PressureUnit.Bar, "bar", 100000.0),
        (PressureUnit.KilogramForcePerSquareCentimetre, "kgfcm2", 98066.5),
    ];

    /// <summary>The unit's written code, as in trace columns, data sheets and judgements.</summary>
    public static string Code(this PressureUnit unit) => Table[(int)unit].Code;

    /// <summary>Pascal in one of the unit.</summary>
    public static double InPascal(this PressureUnit unit) => Table[(int)unit].Pascal;

    /// <summary>The unit as a gauge's dial has it.</summary>
    public static string Printed(this PressureUnit unit) => unit == PressureUnit.KilogramForcePerSquareCentimetre ? "kgf/cm²" : unit.Code();

    /// <summary>A reading for people, with its unit: places worth about a tenth of a psi to one kilopascal, what a good shop gauge resolves.</summary>
    /// <param name="pressure">In the unit.</param>
    public static string Format(this PressureUnit unit, double pressure)
    {
        string places = unit switch
        {
            PressureUnit.Psi => Math.Abs(pressure) < 99.95 ? "0.0" : "0",
            PressureUnit.Kilopascal => "0",
            _ => "0.00",
        };
        string digits = pressure.ToString(places, CultureInfo.InvariantCulture);
        return (digits.AsSpan().TrimStart("-0.").IsEmpty ? digits.TrimStart('-') : digits) + " " + unit.Printed();
    }

    public static bool TryParse(string code, out PressureUnit unit)
    {
        foreach (var row in Table)
        {
            if (string.Equals(row.Code, code, StringComparison.Ordinal))
            {
                unit = row.Unit;
                return true;
            }
        }

        unit = default;
        return false;
    }
}
