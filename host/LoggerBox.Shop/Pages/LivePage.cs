using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Units;

namespace LoggerBox.Shop.Pages;

/// <summary>What the logger reads just now, in figures for the far side of the truck. The script fills in what it is sent.</summary>
internal static class LivePage
{
    public static string Render(string? port, PressureUnit unit) => Frame.Render("Live", "/live", page =>
    {
        page.Element("h1", "Live readings", "unseen");
        page.Element("p", port is null ? "No logger is connected to this page." : $"Waiting for the logger on {port} …", "sentence", ("id", "sentence"), ("role", "status"));
        page.Open("div", "dashboard").Open("dl", "figures");
        WriteFigure(page, "speed", "Engine speed", "rpm");
        WriteFigure(page, "main", "Main", Figure.Unit(unit));
        WriteFigure(page, "clutch", "Clutch", Figure.Unit(unit));
        WriteFigure(page, "converter", "Converter", Figure.Unit(unit));
        page.Close("dl").Open("section", "doing", ("aria-label", "What is being done"));
        page.Open("p").Element("span", "Gear", "label").Element("strong", "–", null, ("id", "gear")).Close("p");
        page.Open("p").Element("span", "Step", "label").Element("strong", "–", null, ("id", "doing")).Close("p");
        page.Element("p", "", "clock", ("id", "clock")).Element("p", "", "cue", ("id", "cue"), ("role", "status"));
        page.Element("h2", "Captured").Open("ul", null, ("id", "captured")).Close("ul").Close("section").Close("div");
    }, "live.js");

    private static void WriteFigure(Markup page, string id, string name, string unit)
    {
        page.Open("div", id).Open("dt").Text(name).Element("span", " " + unit, "unit").Close("dt");
        page.Element("dd", "–", null, ("id", id)).Close("div");
    }
}
