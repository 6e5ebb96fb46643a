using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;

namespace LoggerBox.Host.Comparing;

/// <summary>A comparison for a terminal: what became of the suspects, then each reading before and after.</summary>
public static class ComparisonText
{
    public static void Write(Comparison comparison, string before, string after, TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(output);
        output.WriteLine(PlainText.Of($"Before: {before}. After: {after}. {comparison.After.Truck}"));
        output.WriteLine();
        output.WriteLine("==> " + Headline(comparison));
        Suspects(output, "gone ", comparison.Gone);
        Suspects(output, "still", comparison.Still);
        Suspects(output, "new  ", comparison.New);
        foreach (string note in comparison.Notes)
        {
            output.WriteLine("    note: " + PlainText.Of(note));
        }

        output.WriteLine();
        Readings(comparison).WriteTo(output, "   ");
    }

    /// <summary>Promises no more than was measured: a suspect that is gone is no proof, and an incomplete test none at all.</summary>
    public static string Headline(Comparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        if (comparison.After.Suspects.Count > 0)
        {
            return comparison.Still.Count > 0 ? "Still suspected after the repair" : "Another suspect after the repair";
        }

        if (!Outcome.IsComplete(comparison.After))
        {
            return "No suspect after the repair so far; the test is not complete";
        }

        return comparison.Before.Suspects.Count > 0 ? "What was measured is normal after the repair" : "Nothing was suspected before or after";
    }

    private static void Suspects(TextWriter output, string what, IReadOnlyList<string> codes)
    {
        foreach (string code in codes)
        {
            output.WriteLine($"    {what} {PlainText.Of(CauseWords.Of(code))}  [{PlainText.Of(code)}]");
        }
    }

    private static TextTable Readings(Comparison comparison)
    {
        TextTable table = new("lrrrrlll");
        table.Add("", "before", "after", "change", "±", "", "", "");
        foreach (IGrouping<string, ReadingChange> step in comparison.Readings.GroupBy(row => row.Step))
        {
            table.Add(" " + StepWords.Of(step.Key));
            foreach (ReadingChange row in step)
            {
                table.Add(
                    Words.Quantity(row.Quantity),
                    Number(row.Before?.Value, row.Unit),
                    Number(row.After?.Value, row.Unit),
                    row.Change is { } change ? Signed(change, row.Unit) : "-",
                    row.Uncertainty is { } uncertainty ? Figure.Of(uncertainty, row.Unit) : "",
                    Figure.Unit(row.Unit),
                    row.IsReal switch { true => "changed", false => "same within uncertainty", _ => "" },
                    Verdicts(row.Before?.Verdict, row.After?.Verdict));
            }
        }

        return table;
    }

    private static string Number(double? value, string unit) => value is { } number ? Figure.Of(number, unit) : "-";

    private static string Signed(double change, string unit)
    {
        string text = Figure.Of(change, unit);
        return change > 0 && text.AsSpan().TrimStart("0.").Length > 0 ? "+" + text : text;
    }

    private static string Verdicts(Verdict? before, Verdict? after) => (before, after) switch
    {
        (null, null) => "",
        ({ } one, { } other) when one == other => VerdictWords.Word(one),
        _ => Word(before) + ", then " + Word(after),
    };

    private static string Word(Verdict? verdict) => verdict is { } one ? VerdictWords.Word(one) : "not judged";
}
