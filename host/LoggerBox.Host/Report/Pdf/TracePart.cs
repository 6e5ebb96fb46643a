using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using PdfSharp.Drawing;

namespace LoggerBox.Host.Report.Pdf;

/// <summary>Speed and the three pressures over the whole recording, the holds that count shaded.</summary>
internal static class TracePart
{
    private const double Height = 104;
    private const double AxisLeft = Paper.Left + 34;
    private const double AxisRight = Paper.Left + Paper.Width;
    private const double LabelWidth = 34;

    public static void Write(Paper paper, ReportRecording recording, Judgement judgement)
    {
        if (recording.Session.Samples.Count < 2)
        {
            return;
        }

        paper.Heading("Recording " + recording.Name);
        IReadOnlyList<JudgedHold> holds = RecordingHolds.Of(recording.Session, judgement);
        TraceCurve[] curves = TraceCurve.Of(recording, judgement.Unit);
        foreach ((int channel, string name) in ReportWords.Curves)
        {
            TraceCurve curve = curves[channel];
            if (curve.IsEmpty)
            {
                paper.Text(ReportWords.NoCurve(name), PaperFonts.Plain(8), Paper.Soft);
                continue;
            }

            paper.Need(Height + 14);
            Draw(paper, curve, $"{name}, {(channel == Channel.Speed ? "rpm" : Figure.Unit(judgement.Unit))}", holds);
        }

        paper.Text(ReportWords.Traces, PaperFonts.Plain(7.5), Paper.Soft);
        WindowPart.Write(paper, PlotWindow.Of(recording, judgement), Figure.Unit(judgement.Unit));
    }

    private static void Draw(Paper paper, TraceCurve curve, string title, IReadOnlyList<JudgedHold> holds)
    {
        paper.At(Paper.Left, paper.Y, title, PaperFonts.Bold(8), Paper.Ink);
        double top = paper.Y + 22;
        double bottom = paper.Y + Height - 12;
        (double step, double highest) = PlotScale.Upward(curve);
        double X(double second) => AxisLeft + ((second - curve.From) / (curve.To - curve.From) * (AxisRight - AxisLeft));
        double Y(double value) => bottom - (Math.Clamp(value, 0, highest) / highest * (bottom - top));

        DrawHolds(paper, holds, X, top, bottom);
        XFont small = PaperFonts.Plain(7);
        for (double mark = 0; mark <= highest * 1.001; mark += step)
        {
            paper.Page.DrawLine(new XPen(XColors.Gray, mark == 0 ? 0.7 : 0.25), AxisLeft, Y(mark), AxisRight, Y(mark));
            paper.At(AxisLeft - 4, Y(mark) - 4.5, mark.ToString("0.##", CultureInfo.InvariantCulture), small, Paper.Soft, XStringFormats.BaseLineRight);
        }

        double seconds = PlotScale.Step(curve.To - curve.From, 8);
        for (double mark = Math.Ceiling(curve.From / seconds) * seconds; mark <= curve.To; mark += seconds)
        {
            paper.At(X(mark), bottom + 1, mark.ToString("0.##", CultureInfo.InvariantCulture), small, Paper.Soft, XStringFormats.BaseLineCenter);
        }

        DrawCurve(paper, curve, new XPen(XColors.Black, 0.8) { LineJoin = XLineJoin.Round }, X, Y);
        paper.Space(Height + 8);
    }

    private static void DrawHolds(Paper paper, IReadOnlyList<JudgedHold> holds, Func<double, double> x, double top, double bottom)
    {
        double free = 0;
        foreach (JudgedHold hold in holds.OrderBy(hold => hold.StartSeconds))
        {
            double left = x(hold.StartSeconds);
            double right = Math.Max(left + 1.5, x(hold.StartSeconds + hold.DurationSeconds));
            paper.Page.DrawRectangle(Paper.Band, left, top, right - left, bottom - top);
            double middle = (left + right) / 2;
            if (middle - (LabelWidth / 2) >= free)
            {
                paper.At(middle, top - 9, StepCodes.Text(hold.Step), PaperFonts.Plain(6.5), Paper.Ink, XStringFormats.BaseLineCenter);
                free = middle + (LabelWidth / 2);
            }
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
