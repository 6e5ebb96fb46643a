using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;

namespace LoggerBox.Host.Report;

/// <summary>The readings before and after a repair, as a report prints them.</summary>
/// <param name="Headline">What became of the suspects.</param>
/// <param name="Notes">What makes the two less comparable.</param>
public sealed record ReportComparison(string Headline, IReadOnlyList<ReportChange> Rows, IReadOnlyList<string> Notes)
{
    // What the customer's page has room for.
    private const int MostOnThePage = 6;

    /// <summary>What was outside a limit or close to one, before or after; then what else changed. The whole table is for the file.</summary>
    public IReadOnlyList<ReportChange> Telling => [.. Rows.Where(row => row.Matters).Concat(Rows.Where(row => !row.Matters && row.IsReal == true)).Take(MostOnThePage)];
}

/// <param name="Uncertainty">Of the change, expanded, 95.45 %.</param>
/// <param name="IsReal">The change is larger than its uncertainty; null where there is none to tell of.</param>
public sealed record ReportChange(
    string Step, string Quantity, string Unit, double? Before, double? After, double? Change, double? Uncertainty, bool? IsReal, Verdict? VerdictBefore, Verdict? VerdictAfter)
{
    internal bool Matters => new[] { VerdictBefore, VerdictAfter }.OfType<Verdict>().Any(verdict => VerdictWords.IsOutside(verdict) || VerdictWords.IsClose(verdict));

    public string Said => IsReal switch { true => "changed", false => "same", _ => "" };

    /// <summary>"▼ LOW → ✓ in limits".</summary>
    public string Verdicts => (VerdictBefore ?? VerdictAfter) is null ? "" : $"{Spoken(VerdictBefore)} → {Spoken(VerdictAfter)}";

    private static string Spoken(Verdict? verdict) => verdict is Verdict known ? VerdictWords.Symbol(known) + " " + VerdictWords.Word(known) : "–";
}
