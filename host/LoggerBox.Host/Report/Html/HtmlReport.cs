namespace LoggerBox.Host.Report.Html;

/// <summary>The report as one page that needs nothing beside itself: no script, no font, no picture is loaded from anywhere.</summary>
public static class HtmlReport
{
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'";

    public static string Render(ReportDocument report)
    {
        var page = new Markup();
        page.Own("<!DOCTYPE html>\n").Open("html", null, ("lang", "en")).Open("head")
            .Own("<meta charset=\"utf-8\">\n")
            .Open("meta", null, ("http-equiv", "Content-Security-Policy"), ("content", Policy))
            .Own("\n<meta name=\"viewport\" content=\"width=device-width\">\n")
            .Element("title", $"{report.Judgement.Truck}: lack-of-power test, {report.Title}")
            .Open("style").Own(StyleSheet.Text).Close("style")
            .Close("head").Open("body").Open("main");

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
        page.Close("main").Close("body").Close("html");
        return page.ToString();
    }
}
