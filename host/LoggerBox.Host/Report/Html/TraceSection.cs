using System.Collections.Generic;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Report.Html;

/// <summary>Speed and the three pressures over the whole recording, the holds that count shaded.</summary>
internal static class TraceSection
{
    private static readonly (int Channel, string Name, string Ink)[] Plots =
    [
        (Channel.Speed, "engine speed", "#1c2126"),
        (Channel.Main, "main pressure", "#0d4a52"),
        (Channel.Clutch, "clutch pressure", "#b0471a"),
        (Channel.Converter, "converter pressure", "#5a469b"),
    ];

    public static void Write(Markup page, ReportRecording recording, Judgement judgement)
    {
        if (recording.Session.Samples.Count < 2)
        {
            return;
        }

        page.Element("h2", "Recording " + recording.Name);
        IReadOnlyList<JudgedHold> holds = RecordingHolds.Of(recording.Session, judgement);
        foreach ((int channel, string name, string ink) in Plots)
        {
            TraceCurve curve = TraceCurve.Of(recording, channel, judgement.Unit);
            if (curve.IsEmpty)
            {
                page.Element("p", $"No {name} was recorded.", "soft small");
                continue;
            }

            string unit = channel == Channel.Speed ? "rpm" : Figure.Unit(judgement.Unit);
            page.Open("div", "plot");
            TracePlot.Write(page, curve, $"{name}, {unit}", ink, holds);
            page.Close("div");
        }

        page.Element("p", ReportWords.Traces, "soft small");
    }
}
