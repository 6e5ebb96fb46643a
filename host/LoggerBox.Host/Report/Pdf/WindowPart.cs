using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>The judged stretches of a recording, two beside each other, three pressures in each, told apart by their dashes.</summary>
internal static class WindowPart
{
    private const double Height = 93;
    private const double Gap = 14;
    private const double Width = (Paper.Width - Gap) / 2;
    private const double AxisIndent = 26;

    public static void Write(Paper paper, IReadOnlyList<PlotWindow> windows, string unit)
    {
        if (windows.Count == 0)
        {
            return;
        }

        paper.Heading("What was judged, stretch by stretch");
        foreach (PlotWindow[] row in windows.Chunk(2))
        {
            paper.Need(Height);
            for (int i = 0; i < row.Length; i++)
            {
                Draw(paper, row[i], Paper.Left + (i * (Width + Gap)), unit);
            }

            paper.Space(Height);
        }

        paper.Text(ReportWords.Windows, PaperFonts.Plain(7.5), Paper.Soft);
    }

    private static void Draw(Paper paper, PlotWindow window, double left, string unit)
    {
        (double step, double highest) = PlotScale.Upward([.. window.Curves]);
        (double axis, double right, double top, double bottom) = (left + AxisIndent, left + Width, paper.Y + 12, paper.Y + Height - 16);
        double X(double second) => axis + ((second - window.From) / (window.To - window.From) * (right - axis));
        double Y(double value) => bottom - (Math.Clamp(value, 0, highest) / highest * (bottom - top));

        paper.At(left, paper.Y, window.Title, PaperFonts.Bold(7.5), Paper.Ink);
        paper.At(right, paper.Y, unit, PaperFonts.Plain(7), Paper.Soft, XStringFormats.BaseLineRight);
        paper.Page.DrawRectangle(Paper.Band, X(window.Shade.From), top, X(window.Shade.To) - X(window.Shade.From), bottom - top);
        XFont small = PaperFonts.Plain(6.5);
        for (double mark = 0; mark <= highest * 1.001; mark += step)
        {
            paper.Page.DrawLine(new XPen(XColors.Gray, mark == 0 ? 0.7 : 0.25), axis, Y(mark), right, Y(mark));
            paper.At(axis - 3, Y(mark) - 4.5, mark.ToString("0.##", CultureInfo.InvariantCulture), small, Paper.Soft, XStringFormats.BaseLineRight);
        }

        double seconds = PlotScale.Step(window.To - window.From, 5);
        for (double mark = Math.Ceiling(window.From / seconds) * seconds; mark <= window.To; mark += seconds)
        {
            paper.At(X(mark), bottom + 1, mark.ToString("0.##", CultureInfo.InvariantCulture), small, Paper.Soft, XStringFormats.BaseLineCenter);
        }

        foreach ((TraceCurve curve, double[] dashes) in window.Curves.Zip(PlotWindow.Dashes).Where(pair => !pair.First.IsEmpty))
        {
            XPen pen = new(XColors.Black, 0.8) { LineJoin = XLineJoin.Round };
            if (dashes.Length > 0)
            {
                pen.DashPattern = dashes;
            }

            TracePart.DrawCurve(paper, curve, pen, X, Y);
        }
    }
}
