using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>The first page, which is the customer's: what it comes to in one sentence, whose truck and complaint, with what it was measured, who signs.</summary>
internal static class HeadPart
{
    private const double LabelWidth = 92;
    private const double Half = Paper.Width / 2;
    private const double Padding = 9;
    private const double OutsideValue = Paper.Left + 270;
    private const double OutsideVerdict = Paper.Left + 410;

    private static readonly XFont Plain = PaperFonts.Plain(8.5);

    public static void Write(Paper paper, ReportDocument report)
    {
        paper.Text(ReportWords.Kind, PaperFonts.Plain(9), Paper.Soft);
        paper.Text(ReportWords.Truck(report), PaperFonts.Bold(17), Paper.Ink);
        paper.Text($"{report.Title}, report of {ReportWords.Moment(report.Made)}", PaperFonts.Plain(8.5), Paper.Soft, after: 8);
        WriteRelease(paper, report.Release);
        WriteOutcome(paper, report);
        if (report.Comparison is null)
        {
            WriteOutside(paper, report.Judgement);
        }

        WriteSections(paper, report);
        ComparisonPart.WriteTelling(paper, report.Comparison);
        ClosingPart.WriteCautions(paper);
        ClosingPart.WriteSignatures(paper);
    }

    private static void WriteRelease(Paper paper, ReleaseNote? release)
    {
        if (release is not null)
        {
            paper.Text(release.Headline, PaperFonts.Bold(release.IsReleased ? 9.5 : 14), Paper.Ink);
            paper.Text(release.Detail, PaperFonts.Plain(8.5), Paper.Ink, after: 6);
        }
    }

    private static void WriteOutcome(Paper paper, ReportDocument report)
    {
        var (headline, lines) = ReportWords.Outcome(report.Judgement);
        XFont large = PaperFonts.Bold(12.5);
        XFont plain = PaperFonts.Plain(9.5);
        double width = Paper.Width - (2 * Padding);
        List<(string Text, XFont Font)> broken =
        [
            .. paper.Broken(headline, large, width).Select(line => (line, large)),
            .. lines.SelectMany(line => paper.Broken(line, plain, width)).Select(line => (line, plain)),
        ];
        double height = broken.Sum(line => Paper.LineOf(line.Font)) + (2 * Padding);
        paper.Need(height);
        paper.Page.DrawRectangle(new XPen(XColors.Black, 1.4), Paper.Left, paper.Y, Paper.Width, height);
        double y = paper.Y + Padding;
        foreach ((string text, XFont font) in broken)
        {
            paper.At(Paper.Left + Padding, y, text, font, Paper.Ink);
            y += Paper.LineOf(font);
        }

        paper.Space(height + 10);
    }

    private static void WriteOutside(Paper paper, Judgement judgement)
    {
        (IReadOnlyList<ReadingRow> rows, int more) = ReportWords.Outside(judgement);
        if (rows.Count == 0)
        {
            return;
        }

        Part(paper, ReportWords.OutsideLimits);
        foreach (ReadingRow row in rows)
        {
            paper.At(Paper.Left, paper.Y, ReportWords.Place(row), Plain, Paper.Ink);
            paper.At(OutsideValue, paper.Y, ReportWords.NumberWithUnit(row.Value, row.Unit), PaperFonts.Bold(8.5), Paper.Ink, XStringFormats.BaseLineRight);
            paper.At(OutsideValue + 16, paper.Y, "limit " + Figure.Limit(row.Min, row.Max, row.Unit), Plain, Paper.Ink);
            paper.At(OutsideVerdict, paper.Y, ReportWords.Verdict(row), PaperFonts.Bold(8.5), Paper.Ink);
            paper.Space(Paper.LineOf(Plain) + 0.5);
        }

        if (more > 0)
        {
            paper.Text(ReportWords.More(more), PaperFonts.Plain(7.5), Paper.Soft);
        }
    }

    /// <summary>A small heading within the page.</summary>
    public static void Part(Paper paper, string heading)
    {
        paper.Need(30);
        paper.Space(4);
        paper.Text(heading, PaperFonts.Bold(8.5), Paper.Ink, after: 1);
    }

    private static void WriteSections(Paper paper, ReportDocument report)
    {
        foreach (ReportSection section in report.Front)
        {
            Part(paper, section.Heading);
            for (int i = 0; i < section.Facts.Count; i++)
            {
                if (i + 1 < section.Facts.Count && IsShort(paper, section.Facts[i]) && IsShort(paper, section.Facts[i + 1]))
                {
                    WriteFact(paper, section.Facts[i], Paper.Left);
                    WriteFact(paper, section.Facts[++i], Paper.Left + Half);
                    paper.Space(Paper.LineOf(Plain) + 0.5);
                    continue;
                }

                paper.Need(Paper.LineOf(Plain));
                paper.At(Paper.Left, paper.Y, section.Facts[i].Label, Plain, Paper.Soft);
                paper.Text(ValueOf(section.Facts[i]), section.Facts[i].IsLoud ? PaperFonts.Bold(9.5) : Plain, Paper.Ink, LabelWidth, after: 0.5);
            }
        }
    }

    /// <summary>Two of them stand beside each other: the page is the customer's, and there is one.</summary>
    private static bool IsShort(Paper paper, ReportFact fact) => !fact.IsLoud && paper.Broken(ValueOf(fact), Plain, Half - LabelWidth - Padding).Count == 1;

    private static void WriteFact(Paper paper, ReportFact fact, double x)
    {
        paper.Need(Paper.LineOf(Plain));
        paper.At(x, paper.Y, fact.Label, Plain, Paper.Soft);
        paper.At(x + LabelWidth, paper.Y, ValueOf(fact), Plain, Paper.Ink);
    }

    private static string ValueOf(ReportFact fact) => string.IsNullOrWhiteSpace(fact.Value) ? "……………………………" : ReportWords.Short(fact.Value);
}
