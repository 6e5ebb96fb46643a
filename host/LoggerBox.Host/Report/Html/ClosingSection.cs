namespace LoggerBox.Host.Report.Html;

/// <summary>How the uncertainty is meant, how it was judged, and the stories that the first page had no room for.</summary>
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
        foreach (ReportFact fact in ReportWords.LongFacts(report))
        {
            page.Element("h2", fact.Label + ", in full").Element("p", fact.Value!, "story");
        }

        page.Element("footer", ReportWords.Proof(report));
    }
}
