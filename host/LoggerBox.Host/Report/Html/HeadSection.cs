using LoggerBox.Host.Judging;

namespace LoggerBox.Host.Report.Html;

/// <summary>Which truck, whose complaint, measured when; and the one sentence that it comes to.</summary>
internal static class HeadSection
{
    // The complaint is the customer's own sentence and wants the whole width.
    private const int LongFact = 26;

    public static void Write(Markup page, ReportDocument report)
    {
        page.Open("div", "top").Open("div");
        page.Element("div", ReportWords.Kind, "soft");
        page.Element("h1", ReportWords.Truck(report.Judgement));
        page.Close("div").Open("div", "right small");
        page.Element("div", report.Title);
        page.Element("div", "Report of " + ReportWords.Moment(report.Made));
        page.Close("div").Close("div");

        WriteRelease(page, report.Release);
        WriteOutcome(page, report.Judgement);
        WriteFacts(page, report);
    }

    private static void WriteRelease(Markup page, ReleaseNote? release)
    {
        if (release is not null)
        {
            page.Open("div", release.IsReleased ? "release" : "release not").Element("strong", release.Headline).Text(" " + release.Detail).Close("div");
        }
    }

    private static void WriteOutcome(Markup page, Judgement judgement)
    {
        string look = judgement.Suspects.Count > 0 ? "out" : Outcome.IsOpen(judgement) ? "open" : "in";
        var (headline, lines) = ReportWords.Outcome(judgement);
        page.Open("div", "outcome " + look);
        page.Element("strong", headline);
        foreach (string line in lines)
        {
            page.Element("div", line);
        }

        page.Close("div");
    }

    private static void WriteFacts(Markup page, ReportDocument report)
    {
        page.Open("div", "facts");
        foreach (ReportFact fact in ReportWords.Facts(report))
        {
            WriteFact(page, fact.Label, fact.Value ?? "");
        }

        page.Close("div");
    }

    private static void WriteFact(Markup page, string label, string value)
    {
        page.Open("div", value.Length > LongFact ? "wide" : null);
        page.Element("span", label).Element("span", value).Close("div");
    }
}
