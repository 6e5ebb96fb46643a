namespace LoggerBox.Host.Report.Html;

/// <summary>Cautions, how the uncertainty is meant, and how it was judged.</summary>
internal static class ClosingSection
{
    public static void Write(Markup page, ReportDocument report)
    {
        page.Element("h2", "Instrument and uncertainty");
        foreach (ReportRecording recording in report.Recordings)
        {
            page.Element("p", ReportWords.Instrument(recording, report.Judgement.Unit));
        }

        page.Element("p", ReportWords.Uncertainty);
        page.Open("div", "caution").Element("strong", "Cautions. ").Text(ReportWords.Cautions).Close("div");

        page.Element("footer", ReportWords.Proof(report));
    }
}
