using System;
using LoggerBox.Host.Report.Html;

namespace LoggerBox.Shop.Pages;

/// <summary>What all pages share: the way to the others, one heading, and the scripts that a page names.</summary>
internal static class Frame
{
    private static readonly (string Address, string Name)[] Ways =
    [
        ("/", "Jobs"), ("/trucks", "Trucks"), ("/live", "Live"), ("/sheets", "Data sheets"), ("/calibration", "Calibration"),
    ];

    /// <param name="way">Address of the way that this page lies on; empty for none.</param>
    public static string Render(string title, string way, Action<Markup> content, params string[] scripts) => Head(title, scripts) + Body(way, content);

    /// <summary>All that a browser needs to fetch what the page is made with.</summary>
    public static string Head(string title, params string[] scripts)
    {
        var page = new Markup();
        page.Own("<!DOCTYPE html>\n").Open("html", null, ("lang", "en")).Open("head")
            .Own("<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Element("title", $"{title} - LoggerBox")
            .Own("<link rel=\"icon\" href=\"/assets/icon.svg\">\n<link rel=\"stylesheet\" href=\"/assets/uplot/uPlot.min.css\">\n<link rel=\"stylesheet\" href=\"/assets/shop.css\">\n<link rel=\"stylesheet\" href=\"/assets/print.css\" media=\"print\">\n");
        foreach (string script in scripts)
        {
            page.Open("script", null, ("src", "/assets/" + script), ("defer", "")).Close("script");
        }

        return page.Close("head").ToString();
    }

    public static string Body(string way, Action<Markup> content)
    {
        Markup page = new Markup().Open("body");
        page.Element("a", "Go to the page's content", "skip", ("href", "#content"));
        WriteWays(page, way);
        page.Open("main", null, ("id", "content"), ("tabindex", "-1"));
        content(page);
        page.Close("main").Close("body").Close("html");
        return page.ToString();
    }

    public static void WriteFact(Markup page, string label, string value) => page.Open("div").Element("dt", label).Element("dd", value).Close("div");

    private static void WriteWays(Markup page, string current)
    {
        page.Open("nav", null, ("aria-label", "Pages")).Open("ul");
        foreach ((string address, string name) in Ways)
        {
            page.Open("li");
            if (address == current)
            {
                page.Element("a", name, null, ("href", address), ("aria-current", "page"));
            }
            else
            {
                page.Element("a", name, null, ("href", address));
            }

            page.Close("li");
        }

        page.Close("ul").Close("nav");
    }
}
