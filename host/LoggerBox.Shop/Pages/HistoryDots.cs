using System.Linq;
using LoggerBox.Host.Comparing;
using LoggerBox.Host.Report.Html;

namespace LoggerBox.Shop.Pages;

/// <summary>A reading at each visit, one beside the other, with its uncertainty as a stroke: a small drawing, the figures stand beside it.</summary>
internal static class HistoryDots
{
    private const double Width = 114;
    private const double Height = 34;
    private const double Margin = 6;

    public static void Write(Markup page, ReadingHistory history)
    {
        double low = history.Readings.Min(one => one.Reading.Value - one.Reading.Uncertainty);
        double high = history.Readings.Max(one => one.Reading.Value + one.Reading.Uncertainty);
        double span = high > low ? high - low : 1;
        double Y(double value) => Height - Margin - (value - low) / span * (Height - 2 * Margin);
        double step = (Width - 2 * Margin) / (history.Readings.Count - 1);
        page.Open("svg", "dots", ("viewBox", $"0 0 {Width} {Height}"), ("aria-hidden", "true"));
        for (int i = 0; i < history.Readings.Count; i++)
        {
            (double value, double uncertainty) = (history.Readings[i].Reading.Value, history.Readings[i].Reading.Uncertainty);
            string x = Markup.Number(Margin + i * step);
            page.Open("line", null, ("x1", x), ("x2", x), ("y1", Markup.Number(Y(value - uncertainty))), ("y2", Markup.Number(Y(value + uncertainty))), ("stroke", "#14181c"), ("stroke-width", "1.5")).Close("line");
            page.Open("circle", null, ("cx", x), ("cy", Markup.Number(Y(value))), ("r", "3.5"), ("fill", "#14181c")).Close("circle");
        }

        page.Close("svg");
    }
}
