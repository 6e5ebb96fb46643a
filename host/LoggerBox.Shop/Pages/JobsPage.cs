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
    public static string Render(ArchiveFile file)
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
                WriteJobs(page, jobs.Reverse());
            }

            WriteLoose(page, loose);
        });
    }

    /// <summary>The sessions that belong to no job.</summary>
    public static IReadOnlyList<ArchivedSession> Loose(ArchiveFile file)
    {
        HashSet<string> held = [.. file.Jobs.All().SelectMany(job => job.SessionIds)];
        return [.. file.Sessions.All().Where(row => !held.Contains(row.Id))];
    }

    private static void WriteJobs(Markup page, IEnumerable<Job> jobs)
    {
        page.OpenScroller("Work orders").Open("table", "list").Element("caption", "Work orders, newest first").Open("thead").Open("tr");
        foreach (string name in (string[])["job", "truck", "complaint", "opened", "state"])
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
            page.Element("td", job.Details.Complaint).Element("td", When(job.Opened), "when");
            page.Element("td", ReleaseWords.State(job)).Close("tr");
        }

        page.Close("tbody").Close("table").CloseScroller();
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
