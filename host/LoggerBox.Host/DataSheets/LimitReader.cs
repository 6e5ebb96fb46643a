using System;
using System.Linq;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.DataSheets;

/// <summary>Reads one limit in any of its forms: min and max, nominal with a tolerance, or a reference.</summary>
internal static class LimitReader
{
    private static readonly QuantityRange Percent = new("percent", 0, 100);

    /// <returns>Null where the key is not given or is refused.</returns>
    public static Limit? Limit(this TableReader owner, string key, QuantityRange range, PressureUnit? printedIn = null)
    {
        SheetEntry? entry = owner.Take(key);
        if (entry is null)
        {
            return null;
        }

        if (entry.Value is not SheetTable table)
        {
            owner.Refuse(entry, "is no limit; write { min = ..., max = ... }, { nominal = ..., tolerance = ... } or { reference = ... }.");
            return null;
        }

        var reader = new TableReader(table, owner.Findings);
        Limit? limit = Bounds(reader, entry.Line, range);
        if (printedIn is PressureUnit unit && reader.Section("also") is TableReader also)
        {
            limit = SecondUnit.Compare(limit, unit, also);
        }

        reader.RefuseTheRest();
        return limit;
    }

    /// <summary>The bounds without a second unit; leaves unknown keys to the caller.</summary>
    public static Limit? Bounds(TableReader reader, int line, QuantityRange range)
    {
        double? min = reader.Number("min", range);
        double? max = reader.Number("max", range);
        double? nominal = reader.Number("nominal", range);
        double? reference = reader.Number("reference", range);
        Tolerance tolerance = Tolerance.Read(reader, range);

        bool bounded = Has(reader, "min", "max");
        int forms = new[] { bounded, Has(reader, "nominal"), Has(reader, "reference") }.Count(given => given);
        if (forms != 1)
        {
            reader.Findings.Error(line, $"{reader.Path} {(forms == 0 ? "has no figure" : "mixes forms of a limit")}; give min and or max, or nominal with a tolerance, or reference.");
            return null;
        }

        if (!Has(reader, "nominal") && Tolerance.IsGiven(reader))
        {
            reader.Findings.Error(line, $"{reader.Path} has a tolerance without a nominal; give the nominal that it belongs to.");
            return null;
        }

        if (bounded)
        {
            return Between(reader, line, min, max);
        }

        if (reference is double recorded)
        {
            return new Limit(null, null, recorded, line) { Printed = TableReader.Show(recorded) + " (reference)" };
        }

        return nominal is double middle ? tolerance.Around(middle, reader, line, range) : null;
    }

    private static Limit? Between(TableReader reader, int line, double? min, double? max)
    {
        if (min > max)
        {
            reader.Findings.Error(line, $"{reader.Path} has its min {TableReader.Show(min.Value)} above its max {TableReader.Show(max.Value)}; exchange them, or look the limit up again.");
            return null;
        }

        if (min is null && max is null)
        {
            return null;
        }

        string printed = (min, max) switch
        {
            (double low, double high) => $"{TableReader.Show(low)} to {TableReader.Show(high)}",
            (double low, null) => $"at least {TableReader.Show(low)}",
            _ => $"at most {TableReader.Show(max!.Value)}",
        };
        return new Limit(min, max, null, line) { Printed = printed };
    }

    private static bool Has(TableReader reader, params string[] keys) => Array.Exists(keys, key => reader.Table.Find(key) is not null);

    /// <summary>How far a reading may lie from the nominal, in one of three printed forms.</summary>
    private sealed record Tolerance(double? Plain, double? OfHundred, double? Below, double? Above)
    {
        private static readonly string[] Keys = ["tolerance", "tolerance_percent", "below", "above"];

        public static bool IsGiven(TableReader reader) => Has(reader, Keys);

        public static Tolerance Read(TableReader reader, QuantityRange range)
        {
            QuantityRange width = range with { Lowest = 0, Highest = range.Highest - Math.Min(0, range.Lowest) };
            return new Tolerance(
                reader.Number(Keys[0], width), reader.Number(Keys[1], Percent), reader.Number(Keys[2], width), reader.Number(Keys[3], width));
        }

        public Limit? Around(double nominal, TableReader reader, int line, QuantityRange range)
        {
            string path = reader.Path;
            if (!IsGiven(reader))
            {
                reader.Findings.Error(line, $"{path} has a nominal without tolerance; add tolerance, tolerance_percent, or below and above (or write reference = {TableReader.Show(nominal)} to record it only).");
                return null;
            }

            bool sided = Has(reader, "below", "above");
            if ((Has(reader, "tolerance") ? 1 : 0) + (Has(reader, "tolerance_percent") ? 1 : 0) + (sided ? 1 : 0) > 1)
            {
                reader.Findings.Error(line, $"{path} has more than one tolerance; give tolerance, or tolerance_percent, or below and above.");
                return null;
            }

            if (sided && !(Has(reader, "below") && Has(reader, "above")))
            {
                reader.Findings.Error(line, $"{path} has only one of below and above; give both.");
                return null;
            }

            double? under = Plain ?? (OfHundred is double percent ? Math.Abs(nominal) * percent / 100 : Below);
            double? over = Plain ?? (OfHundred is double same ? Math.Abs(nominal) * same / 100 : Above);
            if (under is null || over is null)
            {
                return null;
            }

            if (range.Lowest == 0 && under > nominal)
            {
                reader.Findings.Error(line, $"{path} has a tolerance larger than its nominal {TableReader.Show(nominal)}; give min and max instead, or look the limit up again.");
                return null;
            }

            return new Limit(nominal - under, nominal + over, nominal, line) { Printed = TableReader.Show(nominal) + Printed() };
        }

        private string Printed() => (Plain, OfHundred) switch
        {
            (double plain, _) => " ± " + TableReader.Show(plain),
            (_, double percent) => $" ± {TableReader.Show(percent)} %",
            _ => $" +{TableReader.Show(Above!.Value)} -{TableReader.Show(Below!.Value)}",
        };
    }
}
