using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Releasing;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Subjects;

namespace LoggerBox.Shop.Pages;

/// <summary>What people look at before and after the test: each gate with who ticked it and when, a form to tick those that are open, one to take ticks back, and one to close the job.</summary>
internal static class GatesPage
{
    public const string GateField = "gate";
    public const string ByField = "by";
    public const string NoteField = "note";
    public const string ActField = "act";
    public const string Tick = "tick";
    public const string Withdraw = "withdraw";

    public static string Render(Job job, IReadOnlyList<ArchivedSession> loose) => Frame.Render($"Gates of job {job.Id}", "/", page =>
    {
        page.Open("div", "head").Element("h1", $"Gates of job {job.Id}").Element("p", job.Details.Truck, "what").Close("div");
        ReleaseSection.WriteNote(page, ReleaseWords.Of(job));
        if (job.SessionIds.Count > 0)
        {
            page.Open("p", "actions").Element("a", "Readings and suspects", "button", ("href", "/job/" + job.Id)).Close("p");
        }

        SessionForm.Write(page, job, loose);
        WriteTicks(page, job);
        WriteWithdrawal(page, job);
        ClosingForm.Write(page, job);
    });

    private static void WriteTicks(Markup page, Job job)
    {
        bool isReleased = job.Release.IsReleased;
        page.Open("form", "gates", ("method", "post"), ("action", "/gates/" + job.Id));
        foreach (GateStage stage in job.Release.Gates.Select(state => state.Gate.Stage).Distinct())
        {
            WriteStage(page, job, stage);
        }

        if (!isReleased && job.Release.Gates.Any(state => state.Tick is null))
        {
            page.Element("p", "Look at each at the truck, then tick it: cardboard for leaks, never a hand; engine off before a fitting is touched. A tick stays on record, and so does a withdrawal.", "remark");
            WriteWho(page, "tick", "Note");
            page.Open("p", "actions").Element("button", "Tick what is chosen", null, ("type", "submit"), ("name", ActField), ("value", Tick)).Close("p");
        }

        page.Close("form");
    }

    private static void WriteStage(Markup page, Job job, GateStage stage)
    {
        page.Open("fieldset").Element("legend", ReleaseWords.Of(stage));
        foreach (GateState state in job.Release.Gates.Where(state => state.Gate.Stage == stage))
        {
            if (state.Tick is null && !job.Release.IsReleased)
            {
                WriteChoice(page, job, state, "gate-", "gate open");
                continue;
            }

            bool isDone = state.Tick is not null;
            page.Open("div", isDone ? "gate done" : "gate").Element("span", isDone ? "✓" : "", "sign", ("aria-hidden", "true"));
            page.Open("span", "text").Element("strong", isDone ? "done " : "not ticked ").Text(state.Gate.Text).Close("span");
            page.Element("span", ReleaseWords.Of(job, state), "remark").Close("div");
        }

        page.Close("fieldset");
    }

    /// <summary>Apart from what is ticked: nobody takes a tick back by pressing where one is set.</summary>
    private static void WriteWithdrawal(Markup page, Job job)
    {
        GateState[] ticked = [.. job.Release.Gates.Where(state => state.Tick is not null)];
        if (ticked.Length == 0)
        {
            return;
        }

        page.Open("details", "withdraw").Element("summary", "Take a tick back").Open("form", "gates", ("method", "post"), ("action", "/gates/" + job.Id));
        page.Open("fieldset").Element("legend", "Withdraw, with a name");
        foreach (GateState state in ticked)
        {
            WriteChoice(page, job, state, "taken-", "taken");
        }

        page.Close("fieldset");
        WriteWho(page, "taken", "Why");
        page.Open("p", "actions").Element("button", "Withdraw what is chosen", null, ("type", "submit"), ("name", ActField), ("value", Withdraw)).Close("p").Close("form").Close("details");
    }

    private static void WriteChoice(Markup page, Job job, GateState state, string prefix, string look)
    {
        string id = prefix + state.Gate.Code;
        page.Open("div", look).Open("input", null, ("type", "checkbox"), ("name", GateField), ("value", state.Gate.Code), ("id", id));
        page.Open("label", null, ("for", id)).Element("strong", state.Tick is null ? "open " : "").Text(state.Gate.Text).Close("label");
        page.Element("span", ReleaseWords.Of(job, state), "remark").Close("div");
    }

    private static void WriteWho(Markup page, string prefix, string note)
    {
        page.Open("div", "columns");
        Field.Write(page, prefix, ByField, "Who looked and answers for it", "120", isWanted: true);
        Field.Write(page, prefix, NoteField, note, "2000");
        page.Close("div");
    }
}
