using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>Cautions, how the uncertainty is meant, how it was judged; and the lines to sign on, which stand on the first page.</summary>
internal static class ClosingPart
{
    private const double Gap = 16;

    public static void Write(Paper paper, ReportDocument report)
    {
        XFont font = PaperFonts.Plain(8.5);
        paper.Heading("Instrument and uncertainty");
        foreach (ReportRecording recording in report.Recordings)
        {
            paper.Text(ReportWords.Instrument(recording, report.Judgement.Unit), font, Paper.Ink, after: 2);
        }

        paper.Text(ReportWords.Uncertainty, font, Paper.Ink);
        paper.Heading("Cautions");
        paper.Text(ReportWords.Cautions, font, Paper.Ink, after: 10);
        paper.Text(ReportWords.Proof(report), PaperFonts.Plain(7.5), Paper.Soft);
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
