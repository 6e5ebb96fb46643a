using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Releasing;
using LoggerBox.Host.Report.Html;

namespace LoggerBox.Shop.Pages;

/// <summary>Closes a work order at the page: with a release of the truck, or without one. What is refused is refused by the archive, as at the program.</summary>
internal static class ClosingForm
{
    public const string CauseField = "cause";
    public const string CorrectionField = "correction";
    public const string ActField = "act";
    public const string Release = "release";
    public const string Close = "close";

    public static void Write(Markup page, Job job)
    {
        if (job.Release.IsReleased)
        {
            return;
        }

        var open = job.Release.Open(GateStage.Closing);
        page.Open("form", "gates closing", ("method", "post"), ("action", $"/gates/{job.Id}/close")).Open("fieldset").Element("legend", "Close the job");
        page.Element("p", open.Count == 0 ? "All gates before the truck goes back to work are ticked." : $"The truck is released once these are ticked: {string.Join("; ", open.Select(gate => gate.Text.TrimEnd('.')))}.", "remark");
        page.Open("div", "columns");
        if (job.Closed is null)
        {
            Field.Write(page, "close", CauseField, "Cause found", "2000");
            Field.Write(page, "close", CorrectionField, "Correction", "2000");
        }

        Field.Write(page, "close", GatesPage.ByField, "Who releases the truck and answers for it", "120");
        page.Close("div").Open("p", "actions").Element("button", "Release the truck", null, ("type", "submit"), ("name", ActField), ("value", Release));
        if (job.Closed is null)
        {
            page.Element("button", "Close without a release", null, ("type", "submit"), ("name", ActField), ("value", Close));
        }

        page.Close("p").Close("fieldset").Close("form");
    }
}
