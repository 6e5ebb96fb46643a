using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Judging;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>Suspects, each with what speaks for it, what against it, and the cheapest check that settles it.</summary>
internal static class SuspectPart
{
    public static void Write(Paper paper, Judgement judgement)
    {
        if (judgement.Suspects.Count == 0)
        {
            return;
        }

        paper.Heading("Suspects and what to do next");
        foreach (Suspect suspect in judgement.Suspects.OrderBy(suspect => suspect.Rank))
        {
            paper.Need(48);
            paper.Text(
                suspect.Rank.ToString(CultureInfo.InvariantCulture) + ". " + ReportWords.Capital(CauseWords.Of(suspect.Code)), PaperFonts.Bold(10), Paper.Ink, after: 1);
            WriteList(paper, "+", suspect.For);
            WriteList(paper, "–", suspect.Against);
            paper.Text("Next: " + suspect.Next, PaperFonts.Bold(9), Paper.Ink, 14, after: 6);
        }

        if (ReportWords.HasSharedRanks(judgement))
        {
            paper.Text(ReportWords.SharedRanks, PaperFonts.Plain(8), Paper.Soft);
        }
    }

    private static void WriteList(Paper paper, string sign, IReadOnlyList<string> reasons)
    {
        foreach (string reason in reasons)
        {
            paper.Need(Paper.LineOf(PaperFonts.Plain(8.5)));
            paper.At(Paper.Left + 4, paper.Y, sign, PaperFonts.Bold(8.5), Paper.Ink);
            paper.Text(reason, PaperFonts.Plain(8.5), Paper.Ink, 14);
        }
    }
}
