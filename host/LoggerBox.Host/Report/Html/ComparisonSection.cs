using System.Collections.Generic;

namespace LoggerBox.Host.Report.Html;

/// <summary>Readings before and after the repair: the telling ones for the customer, all of them for the file.</summary>
internal static class ComparisonSection
{
    public static void WriteTelling(Markup page, ReportComparison? comparison)
    {
        if (comparison is null)
        {
            return;
        }

        page.Element("h2", "Before and after the repair: " + comparison.Headline, "part");
        WriteTable(page, comparison.Telling);
        page.Element("p", ReportWords.Telling, "soft small");
    }

    public static void WriteAll(Markup page, ReportComparison? comparison)
    {
        if (comparison is null)
        {
            return;
        }

        page.Element("h2", "Before and after the repair");
        WriteTable(page, comparison.Rows);
        foreach (string note in comparison.Notes)
        {
            page.Element("p", "Note: " + note);
        }
    }

    private static void WriteTable(Markup page, IReadOnlyList<ReportChange> rows)
    {
        page.Open("table", "readings compared").Open("thead").Open("tr").Element("td", "").Element("th", "before", "number").Element("th", "after", "number").Element("th", "change", "number")
            .Element("th", "±", "number").Element("td", "").Element("th", "verdict before → after").Close("tr").Close("thead").Open("tbody");
        foreach (ReportChange row in rows)
        {
            page.Open("tr").Element("td", ReportWords.Place(row));
            page.Element("td", ReportWords.Number(row.Before, row.Unit), "number").Element("td", ReportWords.NumberWithUnit(row.After, row.Unit), "number");
            page.Element("td", ReportWords.Signed(row.Change, row.Unit), "number").Element("td", ReportWords.Number(row.Uncertainty, row.Unit), "number soft");
            page.Element("td", row.Said).Element("td", row.Verdicts).Close("tr");
        }

        page.Close("tbody").Close("table");
    }
}
