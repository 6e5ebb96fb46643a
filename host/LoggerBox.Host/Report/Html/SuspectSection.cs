using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Judging;

namespace LoggerBox.Host.Report.Html;

/// <summary>Suspects, each with what speaks for it, what against it, and the cheapest check that settles it.</summary>
internal static class SuspectSection
{
    public static void Write(Markup page, Judgement judgement)
    {
        if (judgement.Suspects.Count == 0)
        {
            return;
        }

        page.Element("h2", "Suspects and what to do next");
        foreach (Suspect suspect in judgement.Suspects.OrderBy(suspect => suspect.Rank))
        {
            WriteOne(page, suspect);
        }

        if (ReportWords.HasSharedRanks(judgement))
        {
            page.Element("p", ReportWords.SharedRanks, "soft small");
        }
    }

    private static void WriteOne(Markup page, Suspect suspect)
    {
        page.Open("div", "suspect").Open("h3");
        page.Element("span", suspect.Rank.ToString(CultureInfo.InvariantCulture), "rank");
        page.Text(ReportWords.Capital(CauseWords.Of(suspect.Code))).Close("h3");
        WriteList(page, "Speaks for it", suspect.For);
        WriteList(page, "Speaks against it", suspect.Against);
        page.Open("div", "next").Element("strong", "Next: ").Text(suspect.Next).Close("div");
        page.Close("div");
    }

    private static void WriteList(Markup page, string label, IReadOnlyList<string> reasons)
    {
        if (reasons.Count == 0)
        {
            return;
        }

        page.Element("div", label, "label").Open("ul");
        foreach (string reason in reasons)
        {
            page.Element("li", reason);
        }

        page.Close("ul");
    }
}
