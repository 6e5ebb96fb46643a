namespace LoggerBox.Host.Report.Html;

/// <summary>Cautions, with what it was measured, who answers for it, and what proves it unchanged.</summary>
internal static class ClosingSection
{
    public static void Write(Markup page, ReportDocument report)
    {
        page.Element("h2", "Instrument and uncertainty");
        foreach (ReportRecording recording in report.Recordings)
        {
            page.Element("p", ReportWords.Instrument(recording));
        }

        page.Element("p", ReportWords.Uncertainty);
        page.Open("div", "caution").Element("strong", "Cautions. ").Text(ReportWords.Cautions).Close("div");

        page.Open("div", "signatures");
        foreach (string line in ReportWords.Signatures)
        {
            page.Element("div", line);
        }

        page.Close("div").Open("footer");
        foreach (string line in ReportWords.Proof(report))
        {
            page.Element("div", line);
        }

        page.Close("footer");
    }
}
