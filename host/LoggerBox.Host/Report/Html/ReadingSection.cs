using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;

namespace LoggerBox.Host.Report.Html;

/// <summary>Every reading beside its limit, step by step, and the clutch engagements.</summary>
internal static class ReadingSection
{
    public static void Write(Markup page, Judgement judgement)
    {
        page.Element("h2", "Readings");
        page.Open("table", "readings").Open("thead").Open("tr");
        page.Element("td", "").Element("th", "measured", "number").Element("th", "±", "number").Element("th", "peak", "number")
            .Element("th", "limit", "limit").Element("td", "", "band").Element("th", "verdict").Close("tr").Close("thead");

        // A step is not torn apart where the sheet ends: a reading without its step says nothing.
        foreach (IGrouping<string, ReadingRow> step in ReadingTable.Of(judgement).GroupBy(row => row.Step))
        {
            page.Open("tbody").Open("tr", "step").Element("th", StepWords.Of(step.Key), null, ("scope", "rowgroup"), ("colspan", "7")).Close("tr");
            foreach (ReadingRow row in step)
            {
                WriteRow(page, row);
            }

            page.Close("tbody");
        }

        page.Close("table");
        page.Element("p", ReportWords.Measured, "soft small");
        WriteEngagements(page, judgement.Engagements);
    }

    private static void WriteRow(Markup page, ReadingRow row)
    {
        string look = row.Verdict switch
        {
            null or Verdict.NotMeasured or Verdict.Void => "open",
            Verdict verdict when VerdictWords.IsOutside(verdict) => "out",
            Verdict verdict when VerdictWords.IsClose(verdict) => "close",
            _ => "in",
        };
        page.Open("tr").Element("td", Words.Quantity(row.Quantity));
        page.Element("td", row.Value is double value ? Figure.WithUnit(value, row.Unit) : "–", "number");
        page.Element("td", row.Uncertainty is double uncertainty ? Figure.Of(uncertainty, row.Unit) : "", "number soft");
        page.Element("td", row.Peak is double peak ? Figure.Of(peak, row.Unit) : "", "number soft");
        page.Element("td", Figure.Limit(row.Min, row.Max, row.Unit), row.Verdict is null ? "limit soft" : "limit");
        page.Open("td", "band");
        LimitBar.Write(page, row);
        page.Close("td");
        page.Element("td", ReportWords.Verdict(row), "verdict " + look);
        page.Close("tr");
    }

    private static void WriteEngagements(Markup page, IReadOnlyList<JudgedEngagement> engagements)
    {
        if (engagements.Count == 0)
        {
            return;
        }

        page.Element("h2", "Clutch engagements");
        page.Open("table", "readings").Open("thead").Open("tr").Element("th", "gear").Element("th", "at", "number").Element("th", "fill", "number")
            .Element("th", "rise", "number").Element("th", "total", "number").Element("th", "overshoot", "number").Close("tr").Close("thead").Open("tbody");
        foreach (JudgedEngagement engagement in engagements)
        {
            page.Open("tr").Element("td", ReportWords.Engaged(engagement)).Element("td", Figure.Seconds(engagement.StartSeconds) + " s", "number");
            WriteTime(page, engagement.FillSeconds, "s");
            WriteTime(page, engagement.RiseSeconds, "s");
            WriteTime(page, engagement.TotalSeconds, "s");
            WriteTime(page, engagement.OvershootPercent, "%");
            page.Close("tr");
        }

        page.Close("tbody").Close("table");
    }

    private static void WriteTime(Markup page, double? value, string unit) =>
        page.Element("td", value is double number ? Figure.WithUnit(number, unit) : "–", "number");
}
