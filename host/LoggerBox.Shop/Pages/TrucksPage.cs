using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Subjects;

namespace LoggerBox.Shop.Pages;

/// <summary>The trucks that have a serial, by which their visits are known.</summary>
internal static class TrucksPage
{
    public static string Render(ArchiveFile file)
    {
        IGrouping<string, Job>[] trucks =
        [
            .. file.Jobs.All().Where(job => job.Details.Serial.Length > 0).GroupBy(job => job.Details.Serial, StringComparer.OrdinalIgnoreCase).OrderBy(truck => truck.Key, StringComparer.OrdinalIgnoreCase),
        ];
        return Frame.Render("Trucks", "/trucks", page =>
        {
            page.Element("h1", "Trucks");
            if (trucks.Length == 0)
            {
                page.Element("p", "No work order names a serial yet: write one with `loggerbox job new --serial`.", "remark");
                return;
            }

            page.OpenScroller("Trucks").Open("table", "list").Element("caption", "By serial").Open("thead").Open("tr");
            foreach (string name in (string[])["serial", "truck", "visits", "last"])
            {
                page.Element("th", name, null, ("scope", "col"));
            }

            page.Close("tr").Close("thead").Open("tbody");
            foreach (IGrouping<string, Job> truck in trucks)
            {
                Job last = truck.MaxBy(job => job.Opened)!;
                page.Open("tr").Open("th", null, ("scope", "row")).Element("a", truck.Key, "button", ("href", "/truck?serial=" + Uri.EscapeDataString(truck.Key))).Close("th");
                page.Element("td", last.Details.Truck).Element("td", $"{truck.Count()}").Element("td", JobsPage.When(last.Opened), "when").Close("tr");
            }

            page.Close("tbody").Close("table").CloseScroller();
        });
    }
}
