using System.Collections.Generic;
using LoggerBox.Host.Judging;

namespace LoggerBox.Host.Report.Html;

/// <summary>The first page, which is the customer's: what it comes to in one sentence, whose truck and complaint, with what it was measured, who signs.</summary>
internal static class HeadSection
{
    // The complaint is the customer's own sentence and wants the whole width.
    private const int LongFact = 34;

    public static void Write(Markup page, ReportDocument report)
    {
        page.Open("section", "front").Open("div", "top").Open("div");
        page.Element("div", ReportWords.Kind, "soft");
        page.Element("h1", ReportWords.Truck(report));
        page.Close("div").Open("div", "right small");
        page.Element("div", report.Title);
        page.Element("div", "Report of " + ReportWords.Moment(report.Made));
        page.Close("div").Close("div");

        WriteRelease(page, report.Release);
        WriteOutcome(page, report.Judgement);
        if (report.Comparison is null)
        {
            WriteOutside(page, report.Judgement);
        }

        WriteSections(page, report);
        ComparisonSection.WriteTelling(page, report.Comparison);
        page.Open("div", "caution").Element("strong", "Cautions. ").Text(ReportWords.Cautions).Close("div");
        WriteSignatures(page);
        page.Close("section");
    }

    private static void WriteSignatures(Markup page)
    {
        page.Open("div", "signatures");
        foreach (string line in ReportWords.Signatures)
        {
            page.Element("div", line);
        }

        page.Close("div");
    }

    private static void WriteRelease(Markup page, ReleaseNote? release)
    {
        if (release is not null)
        {
            page.Open("div", release.IsReleased ? "release" : "release not").Element("strong", release.Headline).Text(" " + release.Detail).Close("div");
        }
    }

    private static void WriteOutcome(Markup page, Judgement judgement)
    {
        string look = judgement.Suspects.Count > 0 ? "out" : Outcome.IsOpen(judgement) ? "open" : "in";
        var (headline, lines) = ReportWords.Outcome(judgement);
        page.Open("div", "outcome " + look);
        page.Element("strong", headline);
        foreach (string line in lines)
        {
            page.Element("div", line);
        }

        page.Close("div");
    }

    private static void WriteOutside(Markup page, Judgement judgement)
    {
        (IReadOnlyList<ReadingRow> rows, int more) = ReportWords.Outside(judgement);
        if (rows.Count == 0)
        {
            return;
        }

        page.Element("h2", ReportWords.OutsideLimits, "part").Open("table", "readings outside");
        foreach (ReadingRow row in rows)
        {
            page.Open("tr").Element("td", ReportWords.Place(row)).Element("td", ReportWords.NumberWithUnit(row.Value, row.Unit), "number");
            page.Element("td", "limit " + Figure.Limit(row.Min, row.Max, row.Unit)).Element("td", ReportWords.Verdict(row), "verdict out").Close("tr");
        }

        page.Close("table");
        if (more > 0)
        {
            page.Element("p", ReportWords.More(more), "soft small");
        }
    }

    private static void WriteSections(Markup page, ReportDocument report)
    {
        foreach (ReportSection section in report.Front)
        {
            page.Element("h2", section.Heading, "part").Open("div", "facts");
            foreach (ReportFact fact in section.Facts)
            {
                WriteFact(page, fact);
            }

            page.Close("div");
        }
    }

    private static void WriteFact(Markup page, ReportFact fact)
    {
        string value = ReportWords.Short(fact.Value ?? "");
        page.Open("div", (value.Length > LongFact ? "wide" : "") + (fact.IsLoud ? " loud" : ""));
        page.Element("span", fact.Label).Element("span", value).Close("div");
    }
}
