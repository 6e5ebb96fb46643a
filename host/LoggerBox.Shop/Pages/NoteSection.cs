using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Shop.Pages;

/// <summary>What to keep in mind about these readings, and what they cannot see at all.</summary>
internal static class NoteSection
{
    public static void Write(Markup page, Judgement judgement)
    {
        if (judgement.Validity.Count > 0)
        {
            page.Open("section", null, ("aria-labelledby", "notes")).Element("h2", "About the measurement", null, ("id", "notes")).Open("ul", "notes");
            foreach (ValidityNote note in judgement.Validity.OrderBy(note => note.Effect == ValidityEffect.Note))
            {
                page.Open("li").Element("strong", (note.Effect == ValidityEffect.Void ? "✕ Void. " : "") + (note.Step == Step.None ? "" : StepWords.Of(note.Step) + ": "));
                page.Text(note.Text).Close("li");
            }

            page.Close("ul").Close("section");
        }

        page.Open("section", null, ("aria-labelledby", "unseen")).Element("h2", "Not covered by this test", null, ("id", "unseen")).Open("ul", "notes");
        foreach (NotCovered fault in judgement.NotCovered)
        {
            page.Open("li").Element("strong", CauseWords.Of(fault.Code)).Text(": " + fault.Text + " Next: " + fault.Next).Close("li");
        }

        page.Close("ul").Close("section");
    }
}
