using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Judging;

namespace LoggerBox.Host.Report.Html;

/// <summary>The judged stretches of a recording side by side, three pressures in each, told apart by their dashes.</summary>
internal static class WindowPlot
{
    private const double Width = 352;
    private const double Height = 118;
    private const double Left = 34;
    private const double Top = 16;
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
        (double step, double top) = PlotScale.Upward([.. window.Curves]);
        double X(double second) => Left + ((second - window.From) / (window.To - window.From) * (Width - Left - 4));
        double Y(double value) => Height - Bottom - (Math.Clamp(value, 0, top) / top * (Height - Top - Bottom));

        page.Open("svg", null, ("viewBox", $"0 0 {Width} {Height}"), ("role", "figure"), ("aria-label", $"{window.Title}: pressures, {unit}"));
        page.Open(
            "rect", null, ("x", Markup.Number(X(window.Shade.From))), ("y", Markup.Number(Top)), ("width", Markup.Number(X(window.Shade.To) - X(window.Shade.From))),
            ("height", Markup.Number(Height - Top - Bottom)), ("fill", "#dfe5e8")).Close("rect");
        for (double mark = 0; mark <= top * 1.001; mark += step)
        {
            page.Open("path", null, ("d", $"M{Markup.Number(Left)} {Markup.Number(Y(mark))}H{Markup.Number(Width - 4)}"), ("stroke", mark == 0 ? "#59636d" : "#c3ccd2"), ("stroke-width", "0.6")).Close("path");
            TracePlot.Label(page, Left - 4, Y(mark) + 3, mark.ToString("0.##", CultureInfo.InvariantCulture), "end", "#59636d", 8.5);
        }

        double seconds = PlotScale.Step(window.To - window.From, 5);
        for (double mark = Math.Ceiling(window.From / seconds) * seconds; mark <= window.To; mark += seconds)
        {
            TracePlot.Label(page, X(mark), Height - 3, mark.ToString("0.##", CultureInfo.InvariantCulture), "middle", "#59636d", 8.5);
        }

        foreach ((TraceCurve curve, double[] dashes) in window.Curves.Zip(PlotWindow.Dashes).Where(pair => !pair.First.IsEmpty))
        {
            page.Open(
                "path", null, ("d", TracePlot.PathOf(curve, X, Y)), ("fill", "none"), ("stroke", "#1c2126"), ("stroke-width", "1.1"),
                ("stroke-dasharray", dashes.Length == 0 ? "none" : string.Join(' ', dashes.Select(Markup.Number)))).Close("path");
        }

        TracePlot.Label(page, Left, 10, $"{window.Title}", "start", "#1c2126", 10, "600");
        TracePlot.Label(page, Width - 4, 10, unit, "end", "#59636d", 9);
        page.Close("svg");
    }
}
