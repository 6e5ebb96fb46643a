using System.Collections.Generic;
using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>Readings before and after the repair: the telling ones for the customer, all of them for the file.</summary>
internal static class ComparisonPart
{
    private const double Row = 12;

    // Right edges of numbers, left edges of words.
    private const double Before = Paper.Left + 206;
    private const double After = Paper.Left + 258;
    private const double Change = Paper.Left + 298;
    private const double Uncertainty = Paper.Left + 322;
    private const double Said = Paper.Left + 328;
    private const double Verdicts = Paper.Left + 368;

    public static void WriteTelling(Paper paper, ReportComparison? comparison)
    {
        if (comparison is not null)
        {
            HeadPart.Part(paper, "Before and after the repair: " + comparison.Headline);
            WriteTable(paper, comparison.Telling);
            paper.Text(ReportWords.Telling, PaperFonts.Plain(7.5), Paper.Soft);
        }
    }

    public static void WriteAll(Paper paper, ReportComparison? comparison)
    {
        if (comparison is null)
        {
            return;
        }

        paper.Heading("Before and after the repair");
        WriteTable(paper, comparison.Rows);
        foreach (string note in comparison.Notes)
        {
            paper.Text("Note: " + note, PaperFonts.Plain(8.5), Paper.Ink);
        }
    }

    private static void WriteTable(Paper paper, IReadOnlyList<ReportChange> rows)
    {
        XFont head = PaperFonts.Plain(7.5);
        foreach ((double x, string name) in ((double, string)[])[(Before, "before"), (After, "after"), (Change, "change"), (Uncertainty, "±")])
        {
            paper.At(x, paper.Y, name, head, Paper.Soft, XStringFormats.BaseLineRight);
        }

        paper.At(Verdicts, paper.Y, "verdict before, after", head, Paper.Soft);
        paper.Space(Row);
        foreach (ReportChange row in rows)
        {
            WriteRow(paper, row);
        }
    }

    private static void WriteRow(Paper paper, ReportChange row)
    {
        XFont font = PaperFonts.Plain(7.5);
        paper.Need(Row);
        paper.At(Paper.Left, paper.Y, ReportWords.Place(row), font, Paper.Ink);
        foreach ((double x, string text) in ((double, string)[])
            [
                (Before, ReportWords.Number(row.Before, row.Unit)), (After, ReportWords.NumberWithUnit(row.After, row.Unit)),
                (Change, ReportWords.Signed(row.Change, row.Unit)), (Uncertainty, ReportWords.Number(row.Uncertainty, row.Unit)),
            ])
        {
            paper.At(x, paper.Y, text, font, Paper.Ink, XStringFormats.BaseLineRight);
        }

        paper.At(Said, paper.Y, row.Said, font, Paper.Ink);
        paper.At(Verdicts, paper.Y, row.Verdicts, PaperFonts.Plain(7), Paper.Ink);
        paper.Space(Row);
    }
}
