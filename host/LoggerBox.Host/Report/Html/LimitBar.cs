using System;
using LoggerBox.Host.Judging;

namespace LoggerBox.Host.Report.Html;

/// <summary>A small drawing of one reading: limits as a bar, the reading as a tick with its uncertainty; far outside, the tick stands at the edge.</summary>
public static class LimitBar
{
    private const double Width = 114;
    private const double Height = 14;
    private const double Margin = 3;

    // The band stands at the same place in every row, so that the eye runs down the ticks alone.
    private const double BandLeft = 36;
    private const double BandRight = 78;

    public static void Write(Markup page, ReadingRow row)
    {
        if (row.Value is not double value || row.Verdict is null || (row.Min is null && row.Max is null))
        {
            return;
        }

        (double low, double high) = Bounds(row);
        double Place(double quantity) => Math.Clamp(BandLeft + (quantity - low) / (high - low) * (BandRight - BandLeft), Margin, Width - Margin);

        double left = row.Min is null ? 0 : BandLeft;
        double right = row.Max is null ? Width : BandRight;
        double half = row.Uncertainty ?? 0;
        string ink = row.Verdict is Verdict verdict && VerdictWords.IsOutside(verdict) ? "#a8201a" : "#1c2126";

        page.Open("svg", null, ("viewBox", $"0 0 {Width} {Height}"), ("aria-hidden", "true"));
        page.Open("rect", null, ("x", Markup.Number(left)), ("y", "4"), ("width", Markup.Number(right - left)), ("height", "6"), ("fill", "#c3ccd2")).Close("rect");
        Line(page, Place(value - half), 7, Place(value + half), 7, ink, "1.6");
        Line(page, Place(value), 1, Place(value), 13, ink, "2.4");
        page.Close("svg");
    }

    /// <summary>What the band's ends stand for; an open side takes a quarter of the limit, or 1 where the limit is 0.</summary>
    private static (double Low, double High) Bounds(ReadingRow row)
    {
        double given = row.Min ?? row.Max ?? 0;
        double room = given == 0 ? 1 : Math.Abs(given) / 4;
        double low = row.Min ?? given - room;
        double high = row.Max ?? given + room;
        return high > low ? (low, high) : (low - room, high + room);
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
