using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace LoggerBox.Host.Report.Html;

/// <summary>Draws one curve with its axes and the holds behind it.</summary>
internal static class TracePlot
{
    public const string Ink = "#14181c";
    public const string Soft = "#50585f";
    public const string Rule = "#d3dade";
    public const string Shade = "#dfe4e8";

    private const double Width = 720;
    private const double Height = 140;
    private const double Left = 40;
    private const double Right = 6;
    private const double Top = 34;
    private const double Bottom = 17;
    private const double NumberWidth = 13;
    private const double NumberHeight = 10;

    public static void Write(Markup page, TraceCurve curve, string title, IReadOnlyList<NumberedHold> holds)
    {
        (double step, double top) = PlotScale.Upward(curve);
        double X(double second) => Left + (second - curve.From) / (curve.To - curve.From) * (Width - Left - Right);
        double Y(double value) => Height - Bottom - Math.Clamp(value, 0, top) / top * (Height - Top - Bottom);

        page.Open("svg", null, ("viewBox", $"0 0 {Width} {Height}"), ("role", "img"), ("aria-label", title));
        DrawHolds(page, holds, X);
        DrawMarks(page, step, top, Left, Width - Right, Y, 10);
        DrawTime(page, curve, X);
        page.Open("path", null, ("d", PathOf(curve, X, Y)), ("fill", "none"), ("stroke", Ink), ("stroke-width", "1.15"), ("stroke-linejoin", "round")).Close("path");
        if (curve.Lone.Count > 0)
        {
            string ticks = string.Concat(curve.Lone.Select(second => $"M{Markup.Number(X(second))} {Markup.Number(Top)}v4"));
            page.Open("path", "lone", ("d", ticks), ("fill", "none"), ("stroke", Ink), ("stroke-width", "0.9")).Close("path");
        }

        Label(page, Left, 10, title, "start", Ink, 11.5, "600");
        page.Close("svg");
    }

    /// <summary>The lines across, and their figures at the left.</summary>
    public static void DrawMarks(Markup page, double step, double highest, double left, double right, Func<double, double> y, double size)
    {
        for (double mark = 0; mark <= highest * 1.001; mark += step)
        {
            Line(page, left, right, y(mark), mark == 0 ? Soft : Rule);
            Label(page, left - 4, y(mark) + (0.35 * size), mark.ToString("0.##", CultureInfo.InvariantCulture), "end", Soft, size);
        }
    }

    private static void DrawHolds(Markup page, IReadOnlyList<NumberedHold> holds, Func<double, double> x)
    {
        foreach (NumberedHold hold in holds)
        {
            double left = x(hold.From);
            page.Open(
                "rect",
                null,
                ("x", Markup.Number(left)),
                ("y", Markup.Number(Top)),
                ("width", Markup.Number(Math.Max(1.5, x(hold.To) - left))),
                ("height", Markup.Number(Height - Top - Bottom)),
                ("fill", Shade)).Close("rect");
        }

        foreach ((int number, double middle, int row) in NumberedHold.Places(holds, x, NumberWidth))
        {
            Label(page, middle, Top - 3 - (row * NumberHeight), number.ToString(CultureInfo.InvariantCulture), "middle", Ink, 10, "700");
        }
    }

    private static void DrawTime(Markup page, TraceCurve curve, Func<double, double> x)
    {
        double step = PlotScale.Step(curve.To - curve.From, 8);
        for (double mark = Math.Ceiling(curve.From / step) * step; mark <= curve.To; mark += step)
        {
            Label(page, x(mark), Height - 4, mark.ToString("0.##", CultureInfo.InvariantCulture), "middle", Soft, 9.5);
        }
    }

    public static string PathOf(TraceCurve curve, Func<double, double> x, Func<double, double> y)
    {
        var path = new StringBuilder();
        double last = double.NegativeInfinity;
        foreach ((double second, double low, double high) in curve.Points)
        {
            bool joined = second - last <= curve.Gap;
            path.Append(joined ? 'L' : 'M').Append(Markup.Number(x(second))).Append(' ').Append(Markup.Number(y(low)));
            if (high > low)
            {
                path.Append('V').Append(Markup.Number(y(high)));
            }

            last = second;
        }

        return path.ToString();
    }

    private static void Line(Markup page, double from, double to, double y, string ink) =>
        page.Open("line", null, ("x1", Markup.Number(from)), ("y1", Markup.Number(y)), ("x2", Markup.Number(to)), ("y2", Markup.Number(y)), ("stroke", ink), ("stroke-width", "0.7")).Close("line");

    public static void Label(Markup page, double x, double y, string text, string anchor, string ink, double size, string weight = "400") =>
        page.Open(
            "text",
            null,
            ("x", Markup.Number(x)),
            ("y", Markup.Number(y)),
            ("text-anchor", anchor),
            ("fill", ink),
            ("font-size", Markup.Number(size)),
            ("font-weight", weight)).Text(text).Close("text");
}
