using System;

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
