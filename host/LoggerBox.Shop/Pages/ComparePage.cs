using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Comparing;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Subjects;
using LoggerBox.Shop.Comparing;

namespace LoggerBox.Shop.Pages;

/// <summary>Before and after a repair: what became of the suspects, both traces over each other, each reading and its change.</summary>
internal static class ComparePage
{
    public static string Render(ComparedSubjects compared) => Frame.Render("Before and after", "/trucks", page =>
    {
        Comparison comparison = compared.Comparison;
        page.Open("div", "head").Element("h1", NameOf(compared));
        page.Element("p", $"Before: {compared.Before.Subject.Title}. After: {compared.After.Subject.Title}.", "what").Close("div");
        WriteOutcome(page, comparison);
        WriteFigure(page, compared);
        WriteReadings(page, comparison);
    }, "uplot/uPlot.iife.min.js", "strip.js", "window.js", "compare.js", "paper.js");

    private static string NameOf(ComparedSubjects compared) =>
        (compared.After.Job ?? compared.Before.Job) is Job job && JobWords.Name(job, compared.Comparison.After.Truck) is { Length: > 0 } name ? name
        : compared.Comparison.After.Truck.Length > 0 ? compared.Comparison.After.Truck
        : "Before and after";

    private static void WriteOutcome(Markup page, Comparison comparison)
    {
        bool normal = comparison.After.Suspects.Count == 0 && Outcome.IsComplete(comparison.After);
        (string look, string sign) = comparison.After.Suspects.Count > 0 ? ("found", "▶") : normal ? ("normal", "✓") : ("open", "△");
        page.Open("section", "outcome " + look, ("aria-labelledby", "outcome"));
        page.Open("h2", null, ("id", "outcome")).Element("span", sign, "sign", ("aria-hidden", "true")).Text(ComparisonText.Headline(comparison)).Close("h2");
        WriteSuspects(page, "Gone", comparison.Gone);
        WriteSuspects(page, "Still there", comparison.Still);
        WriteSuspects(page, "New", comparison.New);
        foreach (string note in comparison.Notes)
        {
            page.Element("p", "Note: " + note);
        }

        page.Close("section");
    }

    private static void WriteSuspects(Markup page, string what, IReadOnlyList<string> codes)
    {
        if (codes.Count > 0)
        {
            page.Open("p", "first").Element("strong", what + ": ").Text(string.Join("; ", codes.Select(CauseWords.Of))).Close("p");
        }
    }

    private static void WriteFigure(Markup page, ComparedSubjects compared)
    {
        page.Open("section", null, ("aria-labelledby", "traces")).Element("h2", "Laid over each other", null, ("id", "traces"));
        CompareAbout about = CompareAbout.Of(compared);
        page.Open("div", "figure", ("id", "overlay"), ("data-about", JsonSerializer.Serialize(about, ShopJson.Default.CompareAbout))).Close("div").Close("section");
        if (about.Engagements.Count > 0)
        {
            page.Open("section", null, ("aria-labelledby", "filling")).Element("h2", "Clutches filling", null, ("id", "filling"));
            page.Open("div", "figure", ("id", "engagements")).Close("div").Close("section");
        }
    }

    private static void WriteReadings(Markup page, Comparison comparison)
    {
        page.Open("section", null, ("aria-labelledby", "readings")).Element("h2", "Readings", null, ("id", "readings")).OpenScroller("Table of readings").Open("table", "readings");
        page.Element("caption", "±: 95 %, of the change. Changed: by more than that.").Open("thead").Open("tr");
        foreach ((string name, string look) in ((string, string)[])[("reading", ""), ("before", "number"), ("after", "number"), ("change", "number"), ("±", "number"), ("", ""), ("verdict before", ""), ("verdict after", "")])
        {
            page.Element(name.Length == 0 ? "td" : "th", name, look, name.Length == 0 ? [] : [("scope", "col")]);
        }

        page.Close("tr").Close("thead");
        foreach (IGrouping<string, ReadingChange> step in comparison.Readings.GroupBy(row => row.Step))
        {
            page.Open("tbody").Open("tr", "step").Open("th", null, ("scope", "rowgroup"), ("colspan", "8"));
            page.Element("button", StepWords.Of(step.Key), "step", ("type", "button"), ("data-step", step.Key)).Close("th").Close("tr");
            foreach (ReadingChange row in step)
            {
                WriteRow(page, row);
            }

            page.Close("tbody");
        }

        page.Close("table").CloseScroller().Close("section");
    }

    private static void WriteRow(Markup page, ReadingChange row)
    {
        page.Open("tr").Element("th", Words.Quantity(row.Quantity), null, ("scope", "row"));
        page.Element("td", row.Before?.Value is double before ? Figure.Of(before, row.Unit) : "–", "number");
        page.Element("td", row.After?.Value is double after ? Figure.WithUnit(after, row.Unit) : "–", "number measured");
        page.Element("td", row.Change is double change ? Figure.Of(change, row.Unit) : "–", "number");
        page.Element("td", row.Uncertainty is double uncertainty ? Figure.Of(uncertainty, row.Unit) : "", "number");
        page.Open("td");
        if (row.IsReal is bool isReal)
        {
            page.Element("span", isReal ? "changed" : "same", isReal ? "verdict close" : "verdict unsaid");
        }

        page.Close("td").Open("td");
        WriteVerdict(page, row.Before);
        page.Close("td").Open("td");
        WriteVerdict(page, row.After);
        page.Close("td").Close("tr");
    }

    private static void WriteVerdict(Markup page, ReadingRow? row)
    {
        if (row is not null)
        {
            ReadingSection.WriteVerdict(page, row.Verdict);
        }
    }
}
