using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report.Html;

/// <summary>What to keep in mind about these readings, and what they cannot see at all.</summary>
internal static class NoteSection
{
    public static void Write(Markup page, Judgement judgement)
    {
        if (judgement.Validity.Count > 0)
        {
            page.Element("h2", "About the measurement").Open("ul", "notes");
            foreach (ValidityNote note in judgement.Validity.OrderBy(note => note.Effect == ValidityEffect.Note))
            {
                WriteNote(page, note);
            }

            page.Close("ul");
        }

        page.Element("h2", "Not covered by this test").Open("ul", "notes");
        foreach (NotCovered fault in judgement.NotCovered)
        {
            page.Open("li").Element("strong", CauseWords.Of(fault.Code)).Text(": " + fault.Text + " ").Open("em").Text("Next: " + fault.Next).Close("em").Close("li");
        }

        page.Close("ul");
    }

    private static void WriteNote(Markup page, ValidityNote note)
    {
        page.Open("li");
        if (note.Effect == ValidityEffect.Void)
        {
            page.Element("span", "✕ Void", "void").Text(" ");
        }

        if (note.Step != Step.None)
        {
            page.Element("strong", StepWords.Of(note.Step) + ": ");
        }

        page.Text(note.Text).Close("li");
    }
}
