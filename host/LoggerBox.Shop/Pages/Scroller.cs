using LoggerBox.Host.Report.Html;

namespace LoggerBox.Shop.Pages;

/// <summary>Room for a table that a narrow screen has no place for: it is moved by finger or by keys, and the page keeps its width.</summary>
internal static class Scroller
{
    public static Markup OpenScroller(this Markup page, string label) => page.Open("div", "scroller", ("role", "group"), ("aria-label", label), ("tabindex", "0"));

    public static Markup CloseScroller(this Markup page) => page.Close("div");
}
