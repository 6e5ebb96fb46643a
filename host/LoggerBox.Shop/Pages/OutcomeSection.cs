using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;

namespace LoggerBox.Shop.Pages;

/// <summary>What the whole comes to, readable from two metres; told apart by word, sign and frame.</summary>
internal static class OutcomeSection
{
    public static void Write(Markup page, Judgement judgement)
    {
        (string look, string sign) = Look(judgement);
        page.Open("section", "outcome " + look, ("aria-labelledby", "outcome"));
        page.Open("h2", null, ("id", "outcome")).Element("span", sign, "sign", ("aria-hidden", "true")).Text(Outcome.Headline(judgement)).Close("h2");
        if (judgement.Suspects.Count > 0)
        {
            page.Open("p", "first").Element("strong", ReportWords.DoFirst + ": ").Text(ReportWords.FirstChecks(judgement)).Close("p");
        }

        foreach (string warning in ReportWords.Warnings(judgement))
        {
            page.Element("p", warning, "first");
        }

        page.Element("p", Outcome.Explanation(judgement)).Close("section");
    }

    private static (string Look, string Sign) Look(Judgement judgement)
    {
        if (judgement.Suspects.Count > 0)
        {
            return ("found", "▶");
        }

        return Outcome.IsOpen(judgement) ? ("open", "△") : ("normal", "✓");
    }
}
