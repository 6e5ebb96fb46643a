using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;

namespace LoggerBox.Shop.Pages;

/// <summary>The suspects by rank, each with the next check; what speaks for and against it is folded.</summary>
internal static class SuspectSection
{
    public static void Write(Markup page, Judgement judgement)
    {
        if (judgement.Suspects.Count == 0)
        {
            return;
        }

        page.Open("section", null, ("aria-labelledby", "suspects")).Element("h2", "Suspects", null, ("id", "suspects")).Open("ul", "suspects");
        foreach (Suspect suspect in judgement.Suspects.OrderBy(suspect => suspect.Rank))
        {
            page.Open("li").Open("h3").Element("span", suspect.Rank.ToString(CultureInfo.InvariantCulture), "rank").Text(ReportWords.Capital(CauseWords.Of(suspect.Code))).Close("h3");
            page.Open("p").Element("strong", "Next: ").Text(suspect.Next).Close("p");
            page.Open("details").Element("summary", "Why");
            WriteList(page, "Speaks for it", suspect.For);
            WriteList(page, "Speaks against it", suspect.Against);
            page.Close("details").Close("li");
        }

        page.Close("ul");
        if (ReportWords.HasSharedRanks(judgement))
        {
            page.Element("p", ReportWords.SharedRanks, "remark");
        }

        page.Close("section");
    }

    private static void WriteList(Markup page, string label, IReadOnlyList<string> reasons)
    {
        if (reasons.Count == 0)
        {
            return;
        }

        page.Element("p", label, "label").Open("ul");
        foreach (string reason in reasons)
        {
            page.Element("li", reason);
        }

        page.Close("ul");
    }
}
