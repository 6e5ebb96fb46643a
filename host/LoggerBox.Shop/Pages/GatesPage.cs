using System;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Releasing;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Subjects;

namespace LoggerBox.Shop.Pages;

/// <summary>What people look at before and after the test: each gate with who ticked it and when, and a form to tick those that are open.</summary>
internal static class GatesPage
{
    public const string GateField = "gate";
    public const string ByField = "by";
    public const string NoteField = "note";
    public const string ActField = "act";
    public const string Withdraw = "withdraw";

    public const string Tick = "tick";

    public static string Render(Job job) => Frame.Render($"Gates of job {job.Id}", "/", page =>
    {
        page.Open("div", "head").Element("h1", $"Gates of job {job.Id}").Element("p", job.Details.Truck, "what").Close("div");
        ReleaseSection.WriteNote(page, ReleaseWords.Of(job));
        page.Open("form", "gates", ("method", "post"), ("action", "/gates/" + job.Id));
        foreach (GateStage stage in Enum.GetValues<GateStage>())
        {
            WriteStage(page, job, stage);
        }

        WriteWho(page, job);
        page.Close("form");
        page.Element("p", $"Look at each at the truck, then tick it: cardboard for leaks, never a hand; engine off before a fitting is touched. A tick stays on record, and so does a withdrawal. The truck is released by who closes the job: `loggerbox job close {job.Id} --released-by NAME`.", "remark");
        if (job.SessionIds.Count > 0)
        {
            page.Open("p", "actions").Element("a", "Readings and suspects", "button", ("href", "/job/" + job.Id)).Close("p");
        }
    });

    private static void WriteStage(Markup page, Job job, GateStage stage)
    {
        page.Open("fieldset").Element("legend", ReleaseWords.Of(stage));
        foreach (GateState state in job.Release.Gates.Where(state => state.Gate.Stage == stage))
        {
            string id = "gate-" + state.Gate.Code;
            page.Open("div", state.Tick is null ? "gate open" : "gate");
            page.Open("input", null, ("type", "checkbox"), ("name", GateField), ("value", state.Gate.Code), ("id", id));
            page.Open("label", null, ("for", id)).Element("strong", state.Tick is null ? "open " : "✓ ").Text(state.Gate.Text).Close("label");
            page.Element("span", ReleaseWords.Of(job, state), "remark").Close("div");
        }

        page.Close("fieldset");
    }

    private static void WriteWho(Markup page, Job job)
    {
        page.Open("div", "columns").Open("p").Element("label", "Who looked and answers for it", null, ("for", ByField));
        page.Open("input", null, ("id", ByField), ("name", ByField), ("value", ""), ("required", ""), ("maxlength", "120"), ("autocomplete", "off")).Close("p");
        page.Open("p").Element("label", "Note", null, ("for", NoteField));
        page.Open("input", null, ("id", NoteField), ("name", NoteField), ("value", ""), ("maxlength", "2000"), ("autocomplete", "off")).Close("p").Close("div");
        page.Open("p", "actions").Element("button", "Tick what is chosen", null, ("type", "submit"), ("name", ActField), ("value", Tick));
        if (job.Gates.Count > 0)
        {
            page.Element("button", "Withdraw what is chosen", null, ("type", "submit"), ("name", ActField), ("value", Withdraw));
        }

        page.Close("p");
    }
}
