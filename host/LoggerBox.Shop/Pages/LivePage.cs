using System.Collections.Generic;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Shop.Live;

namespace LoggerBox.Shop.Pages;

/// <summary>What the logger reads just now, in figures for the far side of the truck, beside the limits of what is being done. The script fills in what it is sent.</summary>
internal static class LivePage
{
    public static string Render(string? port, LiveLook look, IReadOnlyList<string> sheets) => Frame.Render("Live", "/live", page =>
    {
        page.Element("h1", "Live readings", "unseen");
        page.Open("div", "status").Element("p", port is null ? "No logger is connected to this page." : $"Waiting for the logger on {port} …", "sentence", ("id", "sentence"), ("role", "status"));
        WriteChoice(page, look, sheets);
        page.Close("div").Open("div", "dashboard", ("data-sheet", look.Sheet)).Open("dl", "figures");
        WriteFigure(page, "speed", "Engine speed", "rpm");
        WriteFigure(page, "main", "Main", Figure.Unit(look.Unit));
        WriteFigure(page, "clutch", "Clutch", Figure.Unit(look.Unit));
        WriteFigure(page, "converter", "Converter", Figure.Unit(look.Unit));
        page.Close("dl").Open("section", "doing", ("aria-label", "What is being done"));
        page.Open("p").Element("span", "Gear", "label").Element("strong", "–", null, ("id", "gear")).Close("p");
        page.Open("p").Element("span", "Step", "label").Element("strong", "–", null, ("id", "doing")).Close("p");
        page.Element("p", "", "clock", ("id", "clock")).Element("p", "", "cue", ("id", "cue"), ("role", "status"));
        page.Element("h2", "Done so far").Open("ul", null, ("id", "captured")).Close("ul").Close("section").Close("div");
        if (look.Limits is not null)
        {
            page.Element("p", $"Limits of {look.Sheet} for the step that is recognised just now. A single reading is no verdict, and the engine-off reading is not yet taken off.", "remark");
        }
    }, "live.js");

    private static void WriteChoice(Markup page, LiveLook look, IReadOnlyList<string> sheets)
    {
        if (sheets.Count == 0)
        {
            return;
        }

        page.Open("form", "choice", ("action", "/live"), ("method", "get")).Element("label", "Limits of", null, ("for", "sheet"))
            .Open("select", null, ("id", "sheet"), ("name", "sheet")).Element("option", "no sheet", null, ("value", ""));
        foreach (string sheet in sheets)
        {
            (string, string)[] chosen = sheet == look.Sheet ? [("value", sheet), ("selected", "")] : [("value", sheet)];
            page.Element("option", sheet, null, chosen);
        }

        page.Close("select").Element("button", "Show").Close("form");
    }

    private static void WriteFigure(Markup page, string id, string name, string unit)
    {
        page.Open("div", id).Open("dt").Text(name).Element("span", " " + unit, "unit").Close("dt");
        page.Element("dd", "–", null, ("id", id));
        page.Open("dd", "limits", ("id", id + "-limits"), ("hidden", ""))
            .Open("svg", null, ("viewBox", "0 0 100 12"), ("preserveAspectRatio", "none"), ("aria-hidden", "true"))
            .Open("line", "whole", ("x1", "0"), ("x2", "100"), ("y1", "6"), ("y2", "6")).Close("line")
            .Open("rect", null, ("y", "2.5"), ("height", "7"), ("width", "0")).Close("rect")
            .Open("line", "tick", ("y1", "0"), ("y2", "12")).Close("line").Close("svg")
            .Element("span", "", "range").Element("strong", "", "standing").Close("dd").Close("div");
    }
}
