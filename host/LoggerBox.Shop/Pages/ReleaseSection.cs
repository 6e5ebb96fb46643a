using LoggerBox.Host.Archive;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Subjects;

namespace LoggerBox.Shop.Pages;

/// <summary>Whether the truck may go back to work; the gates themselves are on a page of their own.</summary>
internal static class ReleaseSection
{
    public static void Write(Markup page, Job job)
    {
        WriteNote(page, ReleaseWords.Of(job));
        page.Open("p", "actions").Element("a", "Gates and release", "button", ("href", "/gates/" + job.Id)).Close("p");
    }

    public static void WriteNote(Markup page, ReleaseNote note)
    {
        page.Open("p", note.IsReleased ? "release" : "release not").Element("strong", (note.IsReleased ? "✓ " : "✕ ") + note.Headline);
        page.Text(" " + note.Detail).Close("p");
    }
}
