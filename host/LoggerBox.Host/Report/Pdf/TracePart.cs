using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Protocol.Records;
using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>Speed and the three pressures over the whole recording, the holds that count shaded.</summary>
internal static class TracePart
{
    private const double Height = 112;
    private const double Gap = 6;
    private const double AxisLeft = Paper.Left + 34;
    private const double AxisRight = Paper.Left + Paper.Width;
    private const double NumberWidth = 11;
    private const double NumberHeight = 8;

    public static void Write(Paper paper, ReportRecording recording, Judgement judgement)
    {
        if (recording.Session.Samples.Count < 2)
        {
            return;
        }

        IReadOnlyList<NumberedHold> holds = NumberedHold.Of(recording.Session, judgement);
        TraceCurve[] curves = TraceCurve.Of(recording, judgement.Unit);
        paper.Need(curves.Sum(curve => curve.IsEmpty ? 12 : Height + Gap) + 76);
        paper.Heading("Recording " + recording.Name);
        foreach ((int channel, string name) in ReportWords.Curves)
        {
            TraceCurve curve = curves[channel];
            if (curve.IsEmpty)
            {
                paper.Text(ReportWords.NoCurve(name), PaperFonts.Plain(8), Paper.Soft);
                continue;
            }

            Draw(paper, curve, $"{name}, {(channel == Channel.Speed ? "rpm" : Figure.Unit(judgement.Unit))}", holds);
        }

        paper.Text(NumberedHold.Key(holds), PaperFonts.Plain(8), Paper.Ink, after: 2);
        paper.Text(ReportWords.Traces, PaperFonts.Plain(7.5), Paper.Soft);
        WindowPart.Write(paper, PlotWindow.Of(recording, judgement), Figure.Unit(judgement.Unit));
    }

    private static void Draw(Paper paper, TraceCurve curve, string title, IReadOnlyList<NumberedHold> holds)
    {
        paper.At(Paper.Left, paper.Y, title, PaperFonts.Bold(8), Paper.Ink);
        double top = paper.Y + 30;
        double bottom = paper.Y + Height - 12;
        (double step, double highest) = PlotScale.Upward(curve);
        double X(double second) => AxisLeft + ((second - curve.From) / (curve.To - curve.From) * (AxisRight - AxisLeft));
        double Y(double value) => bottom - (Math.Clamp(value, 0, highest) / highest * (bottom - top));

        DrawHolds(paper, holds, X, top, bottom);
        DrawMarks(paper, step, highest, AxisLeft, AxisRight, Y, PaperFonts.Plain(7));
        double seconds = PlotScale.Step(curve.To - curve.From, 8);
        for (double mark = Math.Ceiling(curve.From / seconds) * seconds; mark <= curve.To; mark += seconds)
        {
            paper.At(X(mark), bottom + 1, mark.ToString("0.##", CultureInfo.InvariantCulture), PaperFonts.Plain(7), Paper.Soft, XStringFormats.BaseLineCenter);
        }

        DrawCurve(paper, curve, new XPen(XColors.Black, 0.8) { LineJoin = XLineJoin.Round }, X, Y);
        foreach (double second in curve.Lone)
        {
            paper.Page.DrawLine(new XPen(XColors.Black, 0.6), X(second), top, X(second), top + 3.5);
        }

        paper.Space(Height + Gap);
    }

    private static void DrawHolds(Paper paper, IReadOnlyList<NumberedHold> holds, Func<double, double> x, double top, double bottom)
    {
        foreach (NumberedHold hold in holds)
        {
            double left = x(hold.From);
            paper.Page.DrawRectangle(Paper.Band, left, top, Math.Max(1.5, x(hold.To) - left), bottom - top);
        }

        foreach ((int number, double middle, int row) in NumberedHold.Places(holds, x, NumberWidth))
        {
            paper.At(middle, top - 9.5 - (row * NumberHeight), number.ToString(CultureInfo.InvariantCulture), PaperFonts.Bold(7), Paper.Ink, XStringFormats.BaseLineCenter);
        }
    }

    /// <summary>The lines across, and their figures at the left.</summary>
    public static void DrawMarks(Paper paper, double step, double highest, double left, double right, Func<double, double> y, XFont font)
    {
        for (double mark = 0; mark <= highest * 1.001; mark += step)
        {
            paper.Page.DrawLine(new XPen(XColors.Gray, mark == 0 ? 0.7 : 0.25), left, y(mark), right, y(mark));
            paper.At(left - 3, y(mark) - 4.5, mark.ToString("0.##", CultureInfo.InvariantCulture), font, Paper.Soft, XStringFormats.BaseLineRight);
        }
    }

    public static void DrawCurve(Paper paper, TraceCurve curve, XPen pen, Func<double, double> x, Func<double, double> y)
    {
        List<XPoint> run = [];
        double last = double.NegativeInfinity;
        foreach ((double second, double low, double high) in curve.Points)
        {
            if (second - last > curve.Gap)
            {
                End(paper, pen, run);
            }

            run.Add(new XPoint(x(second), y(low)));
            if (high > low)
            {
                run.Add(new XPoint(x(second), y(high)));
            }

            last = second;
        }

        End(paper, pen, run);
    }

    private static void End(Paper paper, XPen pen, List<XPoint> run)
    {
        if (run.Count > 1)
        {
            paper.Page.DrawLines(pen, [.. run]);
        }

        run.Clear();
    }
}
