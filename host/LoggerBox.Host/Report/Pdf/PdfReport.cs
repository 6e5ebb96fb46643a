using System;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>The report as sheets of paper: the first for the customer, the rest for the file. It says what the page says.</summary>
public static class PdfReport
{
    public static byte[] Render(ReportDocument report)
    {
        ArgumentNullException.ThrowIfNull(report);
        using Paper paper = new($"{ReportWords.Truck(report)}: lack-of-power test, {report.Title}", report.Made);
        HeadPart.Write(paper, report);
        paper.NewPage();
        ReadingPart.Write(paper, report.Judgement);
        ComparisonPart.WriteAll(paper, report.Comparison);
        foreach (ReportRecording recording in report.Recordings)
        {
            TracePart.Write(paper, recording, report.Judgement);
        }

        SuspectPart.Write(paper, report.Judgement);
        NotePart.Write(paper, report.Judgement);
        ClosingPart.Write(paper, report);
        string released = report.Release is { IsReleased: false } not ? not.Headline + " · " : "";
        return paper.Finish($"{released}{ReportWords.Truck(report)} · {report.Title} · {ReportWords.Moment(report.Made)}");
    }
}
