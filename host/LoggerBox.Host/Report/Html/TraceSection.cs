using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Report.Html;

/// <summary>Speed and the three pressures over the whole recording, the holds that count shaded.</summary>
internal static class TraceSection
{
    // One a curve, in their order.
    private static readonly string[] Inks = ["#1c2126", "#0d4a52", "#b0471a", "#5a469b"];

    public static void Write(Markup page, ReportRecording recording, Judgement judgement)
    {
        if (recording.Session.Samples.Count < 2)
        {
            return;
        }

        page.Element("h2", "Recording " + recording.Name);
        IReadOnlyList<JudgedHold> holds = RecordingHolds.Of(recording.Session, judgement);
        TraceCurve[] curves = TraceCurve.Of(recording, judgement.Unit);
        foreach (((int channel, string name), string ink) in ReportWords.Curves.Zip(Inks))
        {
            TraceCurve curve = curves[channel];
            if (curve.IsEmpty)
            {
                page.Element("p", ReportWords.NoCurve(name), "soft small");
                continue;
            }

            string unit = channel == Channel.Speed ? "rpm" : Figure.Unit(judgement.Unit);
            page.Open("div", "plot");
            TracePlot.Write(page, curve, $"{name}, {unit}", ink, holds);
            page.Close("div");
        }

        page.Element("p", ReportWords.Traces, "soft small");
        WindowPlot.Write(page, PlotWindow.Of(recording, judgement), Figure.Unit(judgement.Unit));
    }
}
