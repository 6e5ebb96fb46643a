using System.Collections.Generic;
using System.Linq;
using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>Which truck, whose complaint, measured when; and the one sentence that it comes to.</summary>
internal static class HeadPart
{
    private const double LabelWidth = 104;
    private const double Padding = 9;

    public static void Write(Paper paper, ReportDocument report)
    {
        paper.Text(ReportWords.Kind, PaperFonts.Plain(9), Paper.Soft);
        paper.Text(ReportWords.Truck(report.Judgement), PaperFonts.Bold(17), Paper.Ink);
        paper.Text($"{report.Title}, report of {ReportWords.Moment(report.Made)}", PaperFonts.Plain(8.5), Paper.Soft, after: 8);
        WriteRelease(paper, report.Release);
        WriteOutcome(paper, report);
        WriteFacts(paper, report);
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

    private static void WriteFacts(Paper paper, ReportDocument report)
    {
        XFont font = PaperFonts.Plain(9);
        foreach (ReportFact fact in ReportWords.Facts(report))
        {
            paper.Need(Paper.LineOf(font));
            paper.At(Paper.Left, paper.Y, fact.Label, font, Paper.Soft);
            paper.Text(string.IsNullOrWhiteSpace(fact.Value) ? "……………………………" : fact.Value, font, Paper.Ink, LabelWidth, after: 1);
        }
    }
}
