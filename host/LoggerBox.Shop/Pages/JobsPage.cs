using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Subjects;

namespace LoggerBox.Shop.Pages;

/// <summary>The work orders, newest first, and the sessions that belong to none.</summary>
internal static class JobsPage
{
    /// <param name="outcome">What a job comes to; null where nobody has read it yet.</param>
    public static string Render(ArchiveFile file, Func<Job, string?> outcome)
    {
        IReadOnlyList<Job> jobs = file.Jobs.All();
        IReadOnlyList<ArchivedSession> loose = Loose(file);
        return Frame.Render("Jobs", "/", page =>
        {
            page.Element("h1", "Jobs").Open("p", "actions").Element("a", "New job", "button", ("href", "/jobs/new")).Close("p");
            if (jobs.Count == 0)
            {
                page.Element("p", "No work order yet.", "remark");
            }
            else
            {
                WriteJobs(page, jobs.Reverse(), outcome, [.. ReadAhead.Newest(file)]);
            }

            WriteLoose(page, loose);
        }, "jobs.js");
    }

    /// <summary>The sessions that belong to no job.</summary>
    public static IReadOnlyList<ArchivedSession> Loose(ArchiveFile file)
    {
        HashSet<string> held = [.. file.Jobs.All().SelectMany(job => job.SessionIds)];
        return [.. file.Sessions.All().Where(row => !held.Contains(row.Id))];
    }

    /// <param name="asked">Jobs that are worth reading for the list's sake.</param>
    private static void WriteJobs(Markup page, IEnumerable<Job> jobs, Func<Job, string?> outcome, HashSet<string> asked)
    {
        page.OpenScroller("Work orders").Open("table", "list").Element("caption", "Work orders, newest first").Open("thead").Open("tr");
        foreach (string name in (string[])["job", "truck", "complaint", "outcome", "opened", "state"])
        {
            page.Element("th", name, null, ("scope", "col"));
        }

        page.Close("tr").Close("thead").Open("tbody");
        foreach (Job job in jobs)
        {
            page.Open("tr").Open("th", null, ("scope", "row"));
            WriteName(page, job);
            page.Close("th").Open("td").Element("strong", job.Details.Truck.Length == 0 ? "not named" : job.Details.Truck).Own("<br>");
            page.Element("span", job.Details.Serial, "serial").Close("td");
            page.Element("td", job.Details.Complaint);
            WriteOutcome(page, job, outcome(job), asked.Contains(job.Id));
            page.Element("td", When(job.Opened), "when");
            page.Element("td", ReleaseWords.State(job)).Close("tr");
        }

        page.Close("tbody").Close("table").CloseScroller();
    }

    /// <summary>What somebody found counts more than what the test made likely.</summary>
    private static void WriteOutcome(Markup page, Job job, string? outcome, bool isAsked)
    {
        string words = job.Cause.Length > 0 ? $"Found: {job.Cause}" : outcome ?? "";
        (string, string)[] later = words.Length == 0 && isAsked ? [("data-outcome", job.Id)] : [];
        page.Element("td", words, "comes", later);
    }

    /// <summary>By the clock of who wrote it, short enough for a column of a list.</summary>
    public static string When(DateTimeOffset moment) => moment.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    public static void WriteName(Markup page, Job job)
    {
        if (job.SessionIds.Count > 0)
        {
            page.Element("a", job.Id, "button", ("href", "/job/" + job.Id));
            return;
        }

        page.Element("a", job.Id, "button", ("href", "/gates/" + job.Id)).Element("span", " no session yet");
    }

    private static void WriteLoose(Markup page, IReadOnlyList<ArchivedSession> sessions)
    {
        if (sessions.Count == 0)
        {
            return;
        }

        page.Element("h2", "Sessions without a job").OpenScroller("Sessions without a job").Open("table", "list").Element("caption", "Recorded or imported, in no work order").Open("thead").Open("tr");
        foreach (string name in (string[])["session", "recorded", "length", "from", "state"])
        {
            page.Element("th", name, null, ("scope", "col"));
        }

        page.Close("tr").Close("thead").Open("tbody");
        foreach (ArchivedSession row in sessions.Reverse())
        {
            page.Open("tr").Open("th", null, ("scope", "row"));
            if (row.Complete)
            {
                page.Element("a", row.Id, "button", ("href", "/session/" + row.Id));
            }
            else
            {
                page.Element("strong", row.Id);
            }

            page.Close("th").Element("td", SessionWords.Started(row)).Element("td", SessionWords.Length(row)).Element("td", row.Source);
            page.Element("td", SessionWords.State(row).TrimStart(',', ' ')).Close("tr");
        }

        page.Close("tbody").Close("table").CloseScroller();
    }
}
