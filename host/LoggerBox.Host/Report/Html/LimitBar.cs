using System;
using LoggerBox.Host.Judging;

namespace LoggerBox.Host.Report.Html;

/// <summary>A small drawing of one reading: limits as a bar, the reading as a tick with its uncertainty.</summary>
internal static class LimitBar
{
    private const double Width = 114;
    private const double Height = 14;
    private const double Margin = 4;

    public static void Write(Markup page, ReadingRow row)
    {
        if (row.Value is not double value || row.Verdict is null || (row.Min is null && row.Max is null))
        {
            return;
        }

        (double from, double to) = Span(row, value);
        double Place(double quantity) => Margin + (Math.Clamp(quantity, from, to) - from) / (to - from) * (Width - 2 * Margin);

        double left = row.Min is double min ? Place(min) : 0;
        double right = row.Max is double max ? Place(max) : Width;
        double half = row.Uncertainty ?? 0;
        string ink = row.Verdict is Verdict verdict && VerdictWords.IsOutside(verdict) ? "#a8201a" : "#1c2126";

        page.Open("svg", null, ("viewBox", $"0 0 {Width} {Height}"), ("aria-hidden", "true"));
        page.Open("rect", null, ("x", Markup.Number(left)), ("y", "4"), ("width", Markup.Number(right - left)), ("height", "6"), ("fill", "#c3ccd2")).Close("rect");
        Line(page, Place(value - half), 7, Place(value + half), 7, ink, "1.6");
        Line(page, Place(value), 1, Place(value), 13, ink, "2.4");
        page.Close("svg");
    }

    /// <summary>The drawn range: the limits with as much again on the open sides, and the reading in any case.</summary>
    private static (double From, double To) Span(ReadingRow row, double value)
    {
        double low = row.Min ?? row.Max ?? value;
        double high = row.Max ?? row.Min ?? value;
        double room = Math.Max(high - low, 0.25 * Math.Max(Math.Abs(low), Math.Abs(high)));
        double from = Math.Min(low - 0.6 * room, value);
        double to = Math.Max(high + 0.6 * room, value);
        return to > from ? (from, to) : (from - 1, from + 1);
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
