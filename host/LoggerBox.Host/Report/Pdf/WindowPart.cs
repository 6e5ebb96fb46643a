using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>The judged stretches of a recording, two beside each other, three pressures in each, told apart by their dashes.</summary>
internal static class WindowPart
{
    private const double Height = 114;
    private const double SpeedHeight = 16;
    private const double Gap = 14;
    private const double Width = (Paper.Width - Gap) / 2;
    private const double AxisIndent = 26;

    private static readonly XColor Limit = XColor.FromArgb(0x80, 0x88, 0x90);

    public static void Write(Paper paper, IReadOnlyList<PlotWindow> windows, string unit)
    {
        if (windows.Count == 0)
        {
            return;
        }

        paper.Need(Math.Min(2, (windows.Count + 1) / 2) * Height + 40);
        paper.Heading("What was judged, stretch by stretch");
        PlotWindow[][] rows = [.. windows.Chunk(2)];
        for (int i = 0; i < rows.Length; i++)
        {
            // The last row is not left alone on a sheet: the one before goes with it.
            paper.Need(i == rows.Length - 2 ? 2 * Height : Height);
            for (int column = 0; column < rows[i].Length; column++)
            {
                Draw(paper, rows[i][column], Paper.Left + (column * (Width + Gap)), unit);
            }

            paper.Space(Height);
        }

        paper.Text(ReportWords.Windows, PaperFonts.Plain(7.5), Paper.Soft);
    }

    private static void Draw(Paper paper, PlotWindow window, double left, string unit)
    {
        XFont small = PaperFonts.Plain(6.5);
        (double axis, double right, double top, double bottom) = (left + AxisIndent, left + Width, paper.Y + 40, paper.Y + Height - 17);
        double X(double second) => axis + ((second - window.From) / (window.To - window.From) * (right - axis));

        paper.At(left, paper.Y, window.Title, PaperFonts.Bold(7.5), Paper.Ink);
        paper.Page.DrawRectangle(Paper.Band, X(window.Shade.From), paper.Y + 16, X(window.Shade.To) - X(window.Shade.From), bottom - paper.Y - 16);
        DrawSpeed(paper, window, left, X, small);
        DrawPressures(paper, window, X, (axis, right, top, bottom), small);
        paper.At(left, bottom + 1, unit, small, Paper.Soft);
        double seconds = PlotScale.Step(window.To - window.From, 5);
        for (double mark = Math.Ceiling(window.From / seconds) * seconds; mark <= window.To; mark += seconds)
        {
            paper.At(X(mark), bottom + 1, mark.ToString("0.##", CultureInfo.InvariantCulture), small, Paper.Soft, XStringFormats.BaseLineCenter);
        }
    }

    /// <summary>A strip of its own above the pressures: how far the engine moved meanwhile.</summary>
    private static void DrawSpeed(Paper paper, PlotWindow window, double left, Func<double, double> x, XFont small)
    {
        if (window.Speed.IsEmpty)
        {
            return;
        }

        (_, double highest) = PlotScale.Upward(window.Speed);
        double bottom = paper.Y + 18 + SpeedHeight;
        double Y(double value) => bottom - (Math.Clamp(value, 0, highest) / highest * SpeedHeight);
        TracePart.DrawMarks(paper, highest, highest, left + AxisIndent, left + Width, Y, small);
        TracePart.DrawCurve(paper, window.Speed, new XPen(XColors.Black, 0.8) { LineJoin = XLineJoin.Round }, x, Y);
    }

    private static void DrawPressures(Paper paper, PlotWindow window, Func<double, double> x, (double Axis, double Right, double Top, double Bottom) frame, XFont small)
    {
        (double step, double highest) = PlotScale.Upward(window.Curves, window.Limits.Select(limit => limit.Value));
        double Y(double value) => frame.Bottom - (Math.Clamp(value, 0, highest) / highest * (frame.Bottom - frame.Top));
        TracePart.DrawMarks(paper, step, highest, frame.Axis, frame.Right, Y, small);
        foreach (PlotLimit limit in window.Limits)
        {
            XPen pen = new(Limit, 1.6);
            Dash(pen, PlotWindow.Dashes[limit.Curve]);
            paper.Page.DrawLine(pen, x(window.Shade.From), Y(limit.Value), x(window.Shade.To), Y(limit.Value));
        }

        foreach ((TraceCurve curve, double[] dashes) in window.Curves.Zip(PlotWindow.Dashes).Where(pair => !pair.First.IsEmpty))
        {
            XPen pen = new(XColors.Black, 0.8) { LineJoin = XLineJoin.Round };
            Dash(pen, dashes);
            TracePart.DrawCurve(paper, curve, pen, x, Y);
        }
    }

    private static void Dash(XPen pen, double[] dashes)
    {
        if (dashes.Length > 0)
        {
            pen.DashPattern = dashes;
        }
    }
}
