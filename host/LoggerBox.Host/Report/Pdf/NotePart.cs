using LoggerBox.Host.Judging;
using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>What to keep in mind about these readings, and what they cannot see at all.</summary>
internal static class NotePart
{
    public static void Write(Paper paper, Judgement judgement)
    {
        XFont font = PaperFonts.Plain(8.5);
        if (judgement.Validity.Count > 0)
        {
            paper.Heading("About the measurement");
            foreach (var (isVoid, step, text) in ReportWords.Notes(judgement))
            {
                paper.Text((isVoid ? "✕ Void. " : "") + (step.Length == 0 ? "" : step + ": ") + text, isVoid ? PaperFonts.Bold(8.5) : font, Paper.Ink, after: 2);
            }
        }

        paper.Heading("Not covered by this test");
        foreach (NotCovered fault in judgement.NotCovered)
        {
            paper.Text($"{ReportWords.Capital(CauseWords.Of(fault.Code))}: {fault.Text} Next: {fault.Next}", font, Paper.Ink, after: 2);
        }
    }
}
