using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace LoggerBox.Host.Report.Html;

/// <summary>The judged stretches of a recording side by side, speed and three pressures in each, told apart by their dashes.</summary>
internal static class WindowPlot
{
    private const double Width = 352;
    private const string Limit = "#80888f";
    private const double Height = 150;
    private const double Left = 34;
    private const double Right = 4;
    private const double SpeedTop = 22;
    private const double SpeedBottom = 40;
    private const double Top = 52;
    private const double Bottom = 15;

    public static void Write(Markup page, IReadOnlyList<PlotWindow> windows, string unit)
    {
        if (windows.Count == 0)
        {
            return;
        }

        page.Open("div", "windows");
        foreach (PlotWindow window in windows)
        {
            WriteOne(page, window, unit);
        }

        page.Close("div").Element("p", ReportWords.Windows, "soft small");
    }

    private static void WriteOne(Markup page, PlotWindow window, string unit)
    {
        double X(double second) => Left + ((second - window.From) / (window.To - window.From) * (Width - Left - Right));

        page.Open("svg", null, ("viewBox", $"0 0 {Width} {Height}"), ("role", "figure"), ("aria-label", $"{window.Title}: pressures, {unit}"));
        page.Open(
            "rect", null, ("x", Markup.Number(X(window.Shade.From))), ("y", Markup.Number(SpeedTop - 4)), ("width", Markup.Number(X(window.Shade.To) - X(window.Shade.From))),
            ("height", Markup.Number(Height - SpeedTop + 4 - Bottom)), ("fill", TracePlot.Shade)).Close("rect");
        DrawSpeed(page, window, X);
        DrawPressures(page, window, X);
        double seconds = PlotScale.Step(window.To - window.From, 5);
        for (double mark = Math.Ceiling(window.From / seconds) * seconds; mark <= window.To; mark += seconds)
        {
            TracePlot.Label(page, X(mark), Height - 3, mark.ToString("0.##", CultureInfo.InvariantCulture), "middle", TracePlot.Soft, 8.5);
        }

        TracePlot.Label(page, 0, 10, window.Title, "start", TracePlot.Ink, 10, "600");
        TracePlot.Label(page, 0, Height - 3, unit, "start", TracePlot.Soft, 9);
        page.Close("svg");
    }

    /// <summary>A strip of its own above the pressures: how far the engine moved meanwhile.</summary>
    private static void DrawSpeed(Markup page, PlotWindow window, Func<double, double> x)
    {
        if (window.Speed.IsEmpty)
        {
            return;
        }

        (_, double top) = PlotScale.Upward(window.Speed);
        double Y(double value) => SpeedBottom - (Math.Clamp(value, 0, top) / top * (SpeedBottom - SpeedTop));
        TracePlot.DrawMarks(page, top, top, Left, Width - Right, Y, 8.5);
        page.Open("path", "speed", ("d", TracePlot.PathOf(window.Speed, x, Y)), ("fill", "none"), ("stroke", TracePlot.Ink), ("stroke-width", "1.1")).Close("path");
    }

    private static void DrawPressures(Markup page, PlotWindow window, Func<double, double> x)
    {
        (double step, double top) = PlotScale.Upward(window.Curves, window.Limits.Select(limit => limit.Value));
        double Y(double value) => Height - Bottom - (Math.Clamp(value, 0, top) / top * (Height - Top - Bottom));
        TracePlot.DrawMarks(page, step, top, Left, Width - Right, Y, 8.5);
        foreach (PlotLimit limit in window.Limits)
        {
            string line = $"M{Markup.Number(x(window.Shade.From))} {Markup.Number(Y(limit.Value))}H{Markup.Number(x(window.Shade.To))}";
            page.Open("path", "limit", ("d", line), ("fill", "none"), ("stroke", Limit), ("stroke-width", "2.2"), ("stroke-dasharray", DashOf(limit.Curve, 2))).Close("path");
        }

        for (int i = 0; i < window.Curves.Count; i++)
        {
            if (!window.Curves[i].IsEmpty)
            {
                page.Open(
                    "path", "curve", ("d", TracePlot.PathOf(window.Curves[i], x, Y)), ("fill", "none"), ("stroke", TracePlot.Ink), ("stroke-width", "1.1"), ("stroke-dasharray", DashOf(i, 1))).Close("path");
            }
        }
    }

    private static string DashOf(int curve, double size) =>
        PlotWindow.Dashes[curve] is { Length: > 0 } dashes ? string.Join(' ', dashes.Select(length => Markup.Number(size * length))) : "none";
}
