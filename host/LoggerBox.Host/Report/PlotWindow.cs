using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report;

/// <summary>A stretch of a recording that was judged, near enough to be checked by eye: the three pressures over each other.</summary>
/// <param name="Shade">What was judged, seconds.</param>
/// <param name="Curves">Main, clutch, converter; one without a reading is empty.</param>
internal sealed record PlotWindow(string Title, double From, double To, (double From, double To) Shade, IReadOnlyList<TraceCurve> Curves)
{
    private const double BeforeAHold = 3;
    private const double AfterAHold = 2;
    private const double BeforeAnEngagement = 0.4;
    private const double ShortestEngagement = 2;

    /// <summary>Dashes and gaps of main, clutch and converter pressure, in widths of the line: a print without colours tells them apart.</summary>
    public static IReadOnlyList<double[]> Dashes { get; } = [[], [6, 3], [1.4, 2.2]];

    /// <summary>The holds that count, in the order of the recording, then an engagement of each gear.</summary>
    public static IReadOnlyList<PlotWindow> Of(ReportRecording recording, Judgement judgement)
    {
        TraceCurve[] Curves(double from, double to) =>
            TraceCurve.Of(recording, judgement.Unit, from, to)[Channel.Main..];

        List<PlotWindow> windows = [];
        foreach (JudgedHold hold in RecordingHolds.Of(recording.Session, judgement).OrderBy(hold => hold.StartSeconds))
        {
            (double from, double to) = (hold.StartSeconds - BeforeAHold, hold.StartSeconds + hold.DurationSeconds + AfterAHold);
            string speed = hold.Rpm is Reading rpm ? $", {Figure.WithUnit(rpm.Settled, "rpm")}" : "";
            windows.Add(new PlotWindow(StepWords.Of(hold.Step) + speed, from, to, (hold.StartSeconds, hold.StartSeconds + hold.DurationSeconds), Curves(from, to)));
        }

        foreach (JudgedEngagement engagement in Engagements(recording.Session, judgement))
        {
            double took = engagement.TotalSeconds ?? ShortestEngagement;
            (double from, double to) = (engagement.StartSeconds - BeforeAnEngagement, engagement.StartSeconds + Math.Max(ShortestEngagement, 1.6 * took));
            string total = engagement.TotalSeconds is double seconds ? Figure.WithUnit(seconds, "s") : "not filled";
            windows.Add(new PlotWindow($"Engagement, {StepWords.Of(engagement.Gear)}, {total}", from, to, (engagement.StartSeconds, engagement.StartSeconds + took), Curves(from, to)));
        }

        return windows;
    }

    /// <summary>Of each gear the one whose time was judged; without a judged one, the longest.</summary>
    private static IEnumerable<JudgedEngagement> Engagements(RecordedSession session, Judgement judgement)
    {
        long zero = session.Header.StartMicroseconds;
        bool IsHere(JudgedEngagement one) => session.Engagements.Any(record => Math.Abs((record.StartMicroseconds - zero) / 1e6 - one.StartSeconds) < 1e-6);
        foreach ((Gear gear, string step) in ((Gear, string)[])[(Gear.Forward, "engage-F"), (Gear.Reverse, "engage-R")])
        {
            double? judged = judgement.Checks.FirstOrDefault(check => check.Step == step)?.Value;
            JudgedEngagement? shown = judgement.Engagements.Where(one => one.Gear == gear).OrderByDescending(one => one.TotalSeconds == judged).ThenByDescending(one => one.TotalSeconds).FirstOrDefault();
            if (shown is not null && IsHere(shown))
            {
                yield return shown;
            }
        }
    }
}
