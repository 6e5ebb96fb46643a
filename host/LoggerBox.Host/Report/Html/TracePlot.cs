using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using LoggerBox.Host.Judging;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report.Html;

/// <summary>Draws one curve with its axes and the holds behind it.</summary>
internal static class TracePlot
{
    private const double Width = 720;
    private const double Height = 132;
    private const double Left = 40;
    private const double Right = 6;
    private const double Top = 26;
    private const double Bottom = 17;
    private const double LabelWidth = 34;

    public static void Write(Markup page, TraceCurve curve, string title, string ink, IReadOnlyList<JudgedHold> holds)
    {
        (double step, double top) = PlotScale.Upward(curve);
        double X(double second) => Left + (second - curve.From) / (curve.To - curve.From) * (Width - Left - Right);
        double Y(double value) => Height - Bottom - Math.Clamp(value, 0, top) / top * (Height - Top - Bottom);

        page.Open("svg", null, ("viewBox", $"0 0 {Width} {Height}"), ("role", "img"), ("aria-label", title));
        DrawHolds(page, holds, X);
        for (double mark = 0; mark <= top * 1.001; mark += step)
        {
            Line(page, Left, Y(mark), Width - Right, Y(mark), mark == 0 ? "#59636d" : "#d5dbdf");
            Label(page, Left - 5, Y(mark) + 3.5, mark.ToString("0.##", CultureInfo.InvariantCulture), "end", "#59636d", 10);
        }

        DrawTime(page, curve, X);
        page.Open("path", null, ("d", PathOf(curve, X, Y)), ("fill", "none"), ("stroke", ink), ("stroke-width", "1.15"), ("stroke-linejoin", "round")).Close("path");
        Label(page, Left, 10, title, "start", ink, 11.5, "600");
        page.Close("svg");
    }

    private static void DrawHolds(Markup page, IReadOnlyList<JudgedHold> holds, Func<double, double> x)
    {
        double free = 0;
        foreach (JudgedHold hold in holds.OrderBy(hold => hold.StartSeconds))
        {
            double left = x(hold.StartSeconds);
            double right = Math.Max(left + 1.5, x(hold.StartSeconds + hold.DurationSeconds));
            page.Open(
                "rect",
                null,
                ("x", Markup.Number(left)),
                ("y", Markup.Number(Top)),
                ("width", Markup.Number(right - left)),
                ("height", Markup.Number(Height - Top - Bottom)),
                ("fill", "#cfe3e2")).Close("rect");
            double middle = (left + right) / 2;
            if (middle - LabelWidth / 2 >= free)
            {
                Label(page, middle, Top - 3, StepCodes.Text(hold.Step), "middle", "#0d4a52", 8.5);
                free = middle + LabelWidth / 2;
            }
        }
    }

    private static void DrawTime(Markup page, TraceCurve curve, Func<double, double> x)
    {
        double step = PlotScale.Step(curve.To - curve.From, 8);
        for (double mark = Math.Ceiling(curve.From / step) * step; mark <= curve.To; mark += step)
        {
            Label(page, x(mark), Height - 4, mark.ToString("0.##", CultureInfo.InvariantCulture), "middle", "#59636d", 9.5);
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

    private static void Line(Markup page, double x1, double y1, double x2, double y2, string ink) =>
        page.Open("line", null, ("x1", Markup.Number(x1)), ("y1", Markup.Number(y1)), ("x2", Markup.Number(x2)), ("y2", Markup.Number(y2)), ("stroke", ink), ("stroke-width", "0.7")).Close("line");

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
