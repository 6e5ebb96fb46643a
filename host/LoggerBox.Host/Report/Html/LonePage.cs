namespace LoggerBox.Host.Report.Html;

/// <summary>A page that needs nothing beside itself: no script, no font, no picture is loaded from anywhere.</summary>
internal static class LonePage
{
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'";

    /// <summary>Up to where its content begins.</summary>
    public static Markup Begin(string title, string style) => new Markup()
        .Own("<!DOCTYPE html>\n").Open("html", null, ("lang", "en")).Open("head")
        .Own("<meta charset=\"utf-8\">\n")
        .Open("meta", null, ("http-equiv", "Content-Security-Policy"), ("content", Policy))
        .Own("\n<meta name=\"viewport\" content=\"width=device-width\">\n")
        .Element("title", title)
        .Open("style").Own(style).Close("style")
        .Close("head").Open("body").Open("main");

    public static string End(Markup page) => page.Close("main").Close("body").Close("html").ToString();
}
