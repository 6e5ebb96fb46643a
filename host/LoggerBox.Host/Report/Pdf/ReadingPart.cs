using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>Every reading beside its limit, step by step, and the clutch engagements.</summary>
internal static class ReadingPart
{
    private const double Row = 10.8;

    // Right edges of numbers, left edges of words.
    private const double Measured = Paper.Left + 190;
    private const double Uncertainty = Paper.Left + 228;
    private const double Peak = Paper.Left + 268;
    private const double Limit = Paper.Left + 282;
    private const double Bar = Paper.Left + 354;
    private const double Verdict = Paper.Left + 410;

    public static void Write(Paper paper, Judgement judgement)
    {
        paper.Heading("Readings");
        WriteHead(paper);
        foreach (IGrouping<string, ReadingRow> step in ReadingTable.Of(judgement).GroupBy(row => row.Step))
        {
            paper.Need(2 * Row);
            paper.At(Paper.Left, paper.Y, StepWords.Of(step.Key), PaperFonts.Bold(8), Paper.Ink);
            paper.Space(Row);
            foreach (ReadingRow row in step)
            {
                WriteRow(paper, row);
            }
        }

        paper.Space(4);
        paper.Text(ReportWords.Measured, PaperFonts.Plain(7.5), Paper.Soft);
        WriteEngagements(paper, judgement.Engagements);
    }

    private static void WriteHead(Paper paper)
    {
        XFont font = PaperFonts.Plain(8);
        paper.At(Measured, paper.Y, "measured", font, Paper.Soft, XStringFormats.BaseLineRight);
        paper.At(Uncertainty, paper.Y, "±", font, Paper.Soft, XStringFormats.BaseLineRight);
        paper.At(Peak, paper.Y, "peak", font, Paper.Soft, XStringFormats.BaseLineRight);
        paper.At(Limit, paper.Y, "limit", font, Paper.Soft);
        paper.At(Verdict, paper.Y, "verdict", font, Paper.Soft);
        paper.Space(Row);
    }

    private static void WriteRow(Paper paper, ReadingRow row)
    {
        XFont font = PaperFonts.Plain(8);
        paper.Need(Row);
        double y = paper.Y;
        paper.At(Paper.Left + 8, y, Words.Quantity(row.Quantity), font, Paper.Ink);
        paper.At(Measured, y, row.Value is double value ? Figure.WithUnit(value, row.Unit) : "–", font, Paper.Ink, XStringFormats.BaseLineRight);
        paper.At(Uncertainty, y, row.Uncertainty is double uncertainty ? Figure.Of(uncertainty, row.Unit) : "", font, Paper.Soft, XStringFormats.BaseLineRight);
        paper.At(Peak, y, row.Peak is double peak ? Figure.Of(peak, row.Unit) : "", font, Paper.Soft, XStringFormats.BaseLineRight);
        paper.At(Limit, y, Figure.Limit(row.Min, row.Max, row.Unit), font, row.Verdict is null ? Paper.Soft : Paper.Ink);
        LimitBand.Draw(paper, Bar, y + 2, row);
        bool outside = row.Verdict is { } verdict && VerdictWords.IsOutside(verdict);
        paper.At(Verdict, y, ReportWords.Verdict(row), outside ? PaperFonts.Bold(8) : font, row.Verdict is null ? Paper.Soft : Paper.Ink);
        paper.Space(Row);
    }

    private static void WriteEngagements(Paper paper, IReadOnlyList<JudgedEngagement> engagements)
    {
        if (engagements.Count == 0)
        {
            return;
        }

        paper.Heading("Clutch engagements");
        WriteLine(paper, PaperFonts.Plain(8), Paper.Soft, ["gear", "at", "fill", "rise", "total", "overshoot"]);
        foreach (JudgedEngagement engagement in engagements)
        {
            WriteLine(paper, PaperFonts.Plain(8), Paper.Ink,
            [
                ReportWords.Engaged(engagement), Figure.Seconds(engagement.StartSeconds) + " s", Of(engagement.FillSeconds, "s"), Of(engagement.RiseSeconds, "s"),
                Of(engagement.TotalSeconds, "s"), Of(engagement.OvershootPercent, "%"),
            ]);
        }
    }

    private static void WriteLine(Paper paper, XFont font, XBrush ink, string[] cells)
    {
        const double column = 66;
        paper.Need(Row);
        paper.At(Paper.Left + 8, paper.Y, cells[0], font, ink);
        for (int i = 1; i < cells.Length; i++)
        {
            paper.At(Paper.Left + 70 + (i * column), paper.Y, cells[i], font, ink, XStringFormats.BaseLineRight);
        }

        paper.Space(Row);
    }

    private static string Of(double? value, string unit) => value is double number ? Figure.WithUnit(number, unit) : "–";
}
