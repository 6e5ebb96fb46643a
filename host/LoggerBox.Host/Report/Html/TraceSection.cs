using System.Collections.Generic;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Report.Html;

/// <summary>Speed and the three pressures over the whole recording, the holds that count shaded.</summary>
internal static class TraceSection
{
    public static void Write(Markup page, ReportRecording recording, Judgement judgement)
    {
        if (recording.Session.Samples.Count < 2)
        {
            return;
        }

        page.Element("h2", "Recording " + recording.Name);
        IReadOnlyList<NumberedHold> holds = NumberedHold.Of(recording.Session, judgement);
        TraceCurve[] curves = TraceCurve.Of(recording, judgement.Unit);
        foreach ((int channel, string name) in ReportWords.Curves)
        {
            TraceCurve curve = curves[channel];
            if (curve.IsEmpty)
            {
                page.Element("p", ReportWords.NoCurve(name), "soft small");
                continue;
            }

            string unit = channel == Channel.Speed ? "rpm" : Figure.Unit(judgement.Unit);
            page.Open("div", "plot");
            TracePlot.Write(page, curve, $"{name}, {unit}", holds);
            page.Close("div");
        }

        page.Element("p", NumberedHold.Key(holds), "small").Element("p", ReportWords.Traces, "soft small");
        WindowPlot.Write(page, PlotWindow.Of(recording, judgement), Figure.Unit(judgement.Unit));
    }
}
