
namespace LoggerBox.Host.Report.Html;

/// <summary>A small drawing of one reading: limits as a bar, the reading as a tick with its uncertainty; far outside, the tick stands at the edge.</summary>
public static class LimitBar
{
    private const double Width = 114;
    private const double Height = 14;

    public static void Write(Markup page, ReadingRow row)
    {
        if (BandScale.Of(row) is not { } scale)
        {
            return;
        }

        const string ink = "#14181c";
        page.Open("svg", null, ("viewBox", $"0 0 {Width} {Height}"), ("aria-hidden", "true"));
        page.Open(
            "rect",
            null,
            ("x", Markup.Number(scale.Left * Width)),
            ("y", "4"),
            ("width", Markup.Number((scale.Right - scale.Left) * Width)),
            ("height", "6"),
            ("fill", "#c3ccd2")).Close("rect");
        Line(page, scale.Least * Width, 7, scale.Most * Width, 7, ink, "1.6");
        Line(page, scale.Tick * Width, 1, scale.Tick * Width, 13, ink, "2.4");
        page.Close("svg");
    }

    private static void Line(Markup page, double x1, double y1, double x2, double y2, string ink, string width) =>
        page.Open(
            "line",
            null,
            ("x1", Markup.Number(x1)),
            ("y1", Markup.Number(y1)),
            ("x2", Markup.Number(x2)),
            ("y2", Markup.Number(y2)),
            ("stroke", ink),
            ("stroke-width", width)).Close("line");
}
