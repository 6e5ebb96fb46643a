using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Comparing;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Units;

namespace LoggerBox.Shop.Pages;

/// <summary>One truck: its visits, two of them to lay over each other, and each reading over the years.</summary>
internal static class TruckPage
{
    public static string Render(ArchiveFile file, string serial, PressureUnit? wanted)
    {
        if (serial.Length == 0)
        {
            throw new UserErrorException("The address names no truck: look for it in the list of trucks.");
        }

        IReadOnlyList<Job> jobs = TruckVisits.Jobs(file, serial);
        if (jobs.Count == 0)
        {
            throw new UserErrorException($"No work order is of a truck with serial {serial}: look for it in the list of trucks.");
        }

        PressureUnit unit = wanted ?? UsualUnit.Of(jobs);
        Job[] tested = [.. jobs.Where(job => job.SessionIds.Count > 0)];
        IReadOnlyList<ReadingHistory> history = TruckHistory.Of(TruckVisits.Of(file, tested));
        return Frame.Render($"Truck {serial}", "/trucks", page =>
        {
            page.Open("div", "head").Element("h1", $"Truck {serial}").Element("p", jobs[^1].Details.Truck, "what").Close("div");
            WriteVisits(page, jobs);
            if (tested.Length >= 2)
            {
                WriteChoice(page, tested);
            }

            WriteHistory(page, history, unit);
        });
    }

    private static void WriteVisits(Markup page, IReadOnlyList<Job> jobs)
    {
        page.OpenScroller("Visits").Open("table", "list").Element("caption", "Visits, newest first").Open("thead").Open("tr");
        foreach (string name in (string[])["job", "opened", "hours", "complaint", "cause found", "done"])
        {
            page.Element("th", name, null, ("scope", "col"));
        }

        page.Close("tr").Close("thead").Open("tbody");
        foreach (Job job in jobs.Reverse())
        {
            page.Open("tr").Open("th", null, ("scope", "row"));
            JobsPage.WriteName(page, job);
            page.Close("th").Element("td", JobsPage.When(job.Opened), "when").Element("td", job.Details.HourMeter is double hours ? $"{hours:0}" : "–");
            page.Element("td", job.Details.Complaint).Element("td", job.Cause).Element("td", job.Correction).Close("tr");
        }

        page.Close("tbody").Close("table").CloseScroller();
    }

    private static void WriteChoice(Markup page, Job[] jobs)
    {
        page.Open("form", "choice actions", ("action", "/compare"));
        WriteSelect(page, "before", "Before", jobs, jobs[0]);
        WriteSelect(page, "after", "After", jobs, jobs[^1]);
        page.Element("button", "Compare", null, ("type", "submit")).Close("form");
    }

    private static void WriteSelect(Markup page, string name, string label, Job[] jobs, Job chosen)
    {
        page.Element("label", label, null, ("for", name)).Open("select", null, ("name", name), ("id", name));
        foreach (Job job in jobs)
        {
            (string, string)[] value = job == chosen ? [("value", job.Id), ("selected", "")] : [("value", job.Id)];
            page.Element("option", $"{job.Id}, {job.Opened:yyyy-MM-dd}", null, value);
        }

        page.Close("select");
    }

    private static void WriteHistory(Markup page, IReadOnlyList<ReadingHistory> history, PressureUnit unit)
    {
        if (history.Count == 0)
        {
            page.Element("p", "A history needs two visits with readings.", "remark");
            return;
        }

        page.Element("h2", "Readings over the visits").OpenScroller("Readings over the visits").Open("table", "list history").Element("caption", "±: 95 %, of the change. Dots: each visit with its uncertainty, on one height.").Open("thead").Open("tr");
        foreach ((string name, string look) in ((string, string)[])[("reading", ""), ("first", "number"), ("last", "number"), ("change", "number"), ("±", "number"), ("in 1000 h", "number"), ("over the visits", "band"), ("", "")])
        {
            page.Element(name.Length == 0 ? "td" : "th", name, look, name.Length == 0 ? [] : [("scope", "col")]);
        }

        page.Close("tr").Close("thead").Open("tbody");
        foreach (ReadingHistory one in history)
        {
            WriteReading(page, one, unit);
        }

        page.Close("tbody").Close("table").CloseScroller();
    }

    private static void WriteReading(Markup page, ReadingHistory one, PressureUnit unit)
    {
        (string words, string code, double scale) = HistoryWords.Of(one.Place, unit);
        string verdict = HistoryWords.Verdict(one);
        page.Open("tr").Element("th", words, null, ("scope", "row"));
        page.Element("td", Figure.Of(one.Readings[0].Reading.Value * scale, code), "number").Element("td", Figure.WithUnit(one.Readings[^1].Reading.Value * scale, code), "number measured");
        page.Element("td", Figure.Of(one.Change * scale, code), "number").Element("td", Figure.Of(one.Uncertainty * scale, code), "number");
        page.Element("td", one.Slope is double slope ? Figure.Of(slope * scale, code) : "–", "number").Open("td", "band");
        HistoryDots.Write(page, one);
        page.Close("td").Open("td").Element("span", verdict.Length == 0 ? "same" : verdict, verdict.Length == 0 ? "verdict unsaid" : "verdict close").Close("td").Close("tr");
    }
}
