using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;

namespace LoggerBox.Shop.Pages;

/// <summary>Every reading beside its limit, step by step; a step's name leads to its place in the trace.</summary>
internal static class ReadingSection
{
    public static void Write(Markup page, Judgement judgement)
    {
        page.Open("section", null, ("aria-labelledby", "readings")).Element("h2", "Readings", null, ("id", "readings")).OpenScroller("Table of readings").Open("table", "readings");
        page.Element("caption", "Measured: the settled mean less the engine-off reading. ±: 95 %. Bar: limits grey, reading as a tick.");
        page.Open("thead").Open("tr");
        foreach ((string name, string look) in ((string, string)[])[("reading", ""), ("measured", "number"), ("±", "number"), ("limit", ""), ("place", "band"), ("verdict", ""), ("peak", "number")])
        {
            page.Element("th", name, look, ("scope", "col"));
        }

        page.Close("tr").Close("thead");
        foreach (IGrouping<string, ReadingRow> step in ReadingTable.Of(judgement).GroupBy(row => row.Step))
        {
            page.Open("tbody").Open("tr", "step").Open("th", null, ("scope", "rowgroup"), ("colspan", "7"));
            page.Element("button", StepWords.Of(step.Key), "step", ("type", "button"), ("data-step", step.Key)).Close("th").Close("tr");
            foreach (ReadingRow row in step)
            {
                WriteRow(page, row);
            }

            page.Close("tbody");
        }

        page.Close("table").CloseScroller().Close("section");
    }

    public static void WriteVerdict(Markup page, Verdict? verdict)
    {
        page.Open("span", "verdict " + Look(verdict));
        if (verdict is Verdict spoken)
        {
            page.Element("span", VerdictWords.Symbol(spoken), null, ("aria-hidden", "true")).Text(" " + VerdictWords.Word(spoken));
        }
        else
        {
            page.Text("recorded");
        }

        page.Close("span");
    }

    private static void WriteRow(Markup page, ReadingRow row)
    {
        page.Open("tr", Look(row.Verdict)).Element("th", Words.Quantity(row.Quantity), null, ("scope", "row"));
        page.Element("td", row.Value is double value ? Figure.WithUnit(value, row.Unit) : "–", "number measured");
        page.Element("td", row.Uncertainty is double uncertainty ? Figure.Of(uncertainty, row.Unit) : "", "number");
        page.Element("td", Figure.Limit(row.Min, row.Max, row.Unit), "limit").Open("td", "band");
        LimitBar.Write(page, row);
        page.Close("td").Open("td");
        WriteVerdict(page, row.Verdict);
        page.Close("td").Element("td", row.Peak is double peak ? Figure.Of(peak, row.Unit) : "", "number").Close("tr");
    }

    private static string Look(Verdict? verdict) => verdict switch
    {
        null or Verdict.NotMeasured or Verdict.Void => "unsaid",
        Verdict spoken when VerdictWords.IsOutside(spoken) => "outside",
        Verdict spoken when VerdictWords.IsClose(spoken) => "close",
        _ => "inside",
    };
}
