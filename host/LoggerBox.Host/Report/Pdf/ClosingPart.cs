using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>How the uncertainty is meant, how it was judged; and the cautions and lines to sign on, which stand on the first page.</summary>
internal static class ClosingPart
{
    private const double Gap = 16;

    public static void Write(Paper paper, ReportDocument report)
    {
        XFont font = PaperFonts.Plain(8.5);
        paper.Need(140);
        paper.Heading("Instrument and uncertainty");
        foreach (ReportRecording recording in report.Recordings)
        {
            paper.Text(ReportWords.Instrument(recording, report.Judgement.Unit), font, Paper.Ink, after: 2);
        }

        paper.Text(ReportWords.Uncertainty, font, Paper.Ink, after: 6);
        paper.Text(ReportWords.Proof(report), PaperFonts.Plain(7.5), Paper.Soft);
        foreach (ReportFact fact in ReportWords.LongFacts(report))
        {
            paper.Heading(fact.Label + ", in full");
            paper.Text(fact.Value!, font, Paper.Ink);
        }
    }

    /// <summary>Small, and on the page that nobody misses.</summary>
    public static void WriteCautions(Paper paper)
    {
        HeadPart.Part(paper, "Cautions");
        paper.Text(ReportWords.Cautions, PaperFonts.Plain(7.5), Paper.Ink);
    }

    /// <summary>Lines to sign on, a technician's, a second person's, the customer's.</summary>
    public static void WriteSignatures(Paper paper)
    {
        const double height = 52;
        paper.Need(height);
        int count = ReportWords.Signatures.Count;
        double width = (Paper.Width - ((count - 1) * Gap)) / count;
        for (int i = 0; i < count; i++)
        {
            double x = Paper.Left + (i * (width + Gap));
            paper.Page.DrawLine(new XPen(XColors.Black, 0.7), x, paper.Y + 34, x + width, paper.Y + 34);
            paper.At(x, paper.Y + 36, ReportWords.Signatures[i], PaperFonts.Plain(7.5), Paper.Soft);
        }

        paper.Space(height);
    }
}
