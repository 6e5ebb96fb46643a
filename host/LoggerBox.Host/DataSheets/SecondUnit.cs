using System;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.DataSheets;

/// <summary>The same limit as printed in a second unit: manuals round both, a typing error shows as a difference beyond rounding.</summary>
internal static class SecondUnit
{
    private const double LargestDisagreement = 0.015;

    public static Limit? Compare(Limit? limit, PressureUnit unit, TableReader also)
    {
        PressureUnit? second = PressureSection.Unit(also);
        if (also.Table.Find("unit") is null)
        {
            also.Findings.Error(also.Table.Line, $"{also.Path} has no unit; add unit = \"psi\", \"kPa\", \"bar\" or \"kgfcm2\".");
        }

        Limit? other = second is PressureUnit known ? LimitReader.Bounds(also, also.Table.Line, QuantityRange.Pressure(known)) : null;
        if (second is null)
        {
            return limit;
        }

        also.RefuseTheRest();
        if (limit is null || other is null)
        {
            return limit;
        }

        double scale = second.Value.InPascal() / unit.InPascal();
        Agree("min", limit.Min, other.Min);
        Agree("max", limit.Max, other.Max);
        Agree("nominal", limit.Nominal, other.Nominal);
        return limit with { PrintedAlso = $"{other.Printed} {second.Value.Code()}" };

        void Agree(string name, double? first, double? printed)
        {
            if (first is null != printed is null)
            {
                string which = printed is null ? "only the first unit has" : "only the second unit has";
                also.Findings.Warning(also.Table.Line, $"{also.Path}: {which} a {name}; look the limit up again.");
                return;
            }

            if (first is not double own || printed is not double value)
            {
                return;
            }

            double converted = value * scale;
            double largest = Math.Max(Math.Abs(own), Math.Abs(converted));
            if (Math.Abs(own - converted) > largest * LargestDisagreement)
            {
                also.Findings.Error(also.Table.Line, FormattableString.Invariant(
                    $"{also.Path} disagrees: {name} {TableReader.Show(value)} {second.Value.Code()} is {converted:0.##} {unit.Code()}, but {TableReader.Show(own)} {unit.Code()} is given ({Math.Abs(own - converted) / largest * 100:0.0} % apart, 1.5 % is allowed); look the limit up again, and write the unit that the manual measures in first."));
            }
        }
    }
}
