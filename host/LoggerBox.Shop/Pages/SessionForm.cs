using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Report.Html;

namespace LoggerBox.Shop.Pages;

/// <summary>Puts a session that belongs to no job into this one, as measured before or after the repair.</summary>
internal static class SessionForm
{
    public const string SessionField = "session";
    public const string RoleField = "role";
    public const string Before = "before";
    public const string After = "after";

    public static void Write(Markup page, Job job, IReadOnlyList<ArchivedSession> loose)
    {
        if (job.Closed is not null || loose.Count == 0)
        {
            return;
        }

        page.Open("details", null).Element("summary", "Add a session to this job").Open("form", "gates", ("method", "post"), ("action", $"/gates/{job.Id}/session")).Open("div", "columns");
        Field.WriteChoice(page, "add", SessionField, "Session", [.. loose.Reverse().Select(row => (row.Id, $"{row.Id}, {SessionWords.Started(row)}, {SessionWords.Length(row)}, {row.Source}"))]);
        Field.WriteChoice(page, "add", RoleField, "Measured", ("", "no repair between"), (Before, "before the repair"), (After, "after the repair"));
        page.Close("div").Open("p", "actions").Element("button", "Add it", null, ("type", "submit")).Close("p").Close("form").Close("details");
    }
}
