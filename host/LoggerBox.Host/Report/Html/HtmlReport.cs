namespace LoggerBox.Host.Report.Html;

/// <summary>The report as one page that needs nothing beside itself.</summary>
public static class HtmlReport
{
    public static string Render(ReportDocument report)
    {
        Markup page = LonePage.Begin($"{ReportWords.Truck(report)}: lack-of-power test, {report.Title}", StyleSheet.Text);
        HeadSection.Write(page, report);
        ReadingSection.Write(page, report.Judgement);
        ComparisonSection.WriteAll(page, report.Comparison);
        foreach (ReportRecording recording in report.Recordings)
        {
            TraceSection.Write(page, recording, report.Judgement);
        }

        SuspectSection.Write(page, report.Judgement);
        NoteSection.Write(page, report.Judgement);
        ClosingSection.Write(page, report);
        return LonePage.End(page);
    }
}
