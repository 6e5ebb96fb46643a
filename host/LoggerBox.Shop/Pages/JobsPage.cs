using System.Collections.Generic;
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
        IReadOnlyList<ArchivedSession> loose = [.. file.Sessions.All().Where(row => !jobs.Any(job => job.SessionIds.Contains(row.Id)))];
        return Frame.Render("Jobs", "/", page =>
        {
            page.Element("h1", "Jobs");
            if (jobs.Count == 0)
            {
                page.Element("p", "No work order yet: write one with `loggerbox job new`.", "remark");
            }
            else
            {
                WriteJobs(page, jobs.Reverse());
            }

            WriteLoose(page, loose);
        });
    }

    private static void WriteJobs(Markup page, IEnumerable<Job> jobs)
    {
        page.Open("table", "list").Element("caption", "Work orders, newest first").Open("thead").Open("tr");
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
            page.Element("td", job.Details.Complaint).Element("td", JobWords.Moment(job.Opened));
            page.Element("td", ReleaseWords.State(job)).Close("tr");
        }

        page.Close("tbody").Close("table");
    }

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

        page.Element("h2", "Sessions without a job").Open("table", "list").Element("caption", "Recorded or imported, in no work order").Open("thead").Open("tr");
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

        page.Close("tbody").Close("table");
    }
}
