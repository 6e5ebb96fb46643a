using LoggerBox.Host.Judging;

namespace LoggerBox.Host.Report.Html;

/// <summary>What to keep in mind about these readings, and what they cannot see at all.</summary>
internal static class NoteSection
{
    public static void Write(Markup page, Judgement judgement)
    {
        if (judgement.Validity.Count > 0)
        {
            page.Element("h2", "About the measurement").Open("ul", "notes");
            foreach (var (isVoid, step, text) in ReportWords.Notes(judgement))
            {
                WriteNote(page, isVoid, step, text);
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

    private static void WriteNote(Markup page, bool isVoid, string step, string text)
    {
        page.Open("li");
        if (isVoid)
        {
            page.Element("span", "✕ Void", "void").Text(" ");
        }

        if (step.Length > 0)
        {
            page.Element("strong", step + ": ");
        }

        page.Text(text).Close("li");
    }
}
