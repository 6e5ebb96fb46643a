using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report;

/// <summary>A stretch of a recording that was judged, near enough to be checked by eye: the speed, and the three pressures over each other.</summary>
/// <param name="Shade">What was judged, seconds.</param>
/// <param name="Curves">Main, clutch, converter; one without a reading is empty.</param>
/// <param name="Limits">That the readings were held against.</param>
internal sealed record PlotWindow(
    string Title, double From, double To, (double From, double To) Shade, TraceCurve Speed, IReadOnlyList<TraceCurve> Curves, IReadOnlyList<PlotLimit> Limits)
{
    private const double BeforeAHold = 3;
    private const double AfterAHold = 2;
    private const double BeforeAnEngagement = 0.4;
    private const double ShortestEngagement = 2;

    /// <summary>Dashes and gaps of main, clutch and converter pressure, in widths of the line: a print without colours tells them apart.</summary>
    public static IReadOnlyList<double[]> Dashes { get; } = [[], [6, 3], [1.4, 2.2]];

    /// <summary>The holds that count, in the order of the recording, then an engagement of each gear. Where the engine stands there is nothing to see.</summary>
    public static IReadOnlyList<PlotWindow> Of(ReportRecording recording, Judgement judgement)
    {
        TraceCurve[] Curves(double from, double to) => TraceCurve.Of(recording, judgement.Unit, from, to);

        List<PlotWindow> windows = [];
        foreach (NumberedHold hold in NumberedHold.Of(recording.Session, judgement).Where(hold => hold.Hold.Step != Step.Zero))
        {
            (double from, double to) = (hold.From - BeforeAHold, hold.To + AfterAHold);
            TraceCurve[] curves = Curves(from, to);
            string speed = hold.Hold.Rpm is Reading rpm ? $", {Figure.WithUnit(rpm.Settled, "rpm")}" : "";
            string title = FormattableString.Invariant($"{hold.Number}  {StepWords.Of(hold.Hold.Step)}{speed}");
            windows.Add(new PlotWindow(title, from, to, (hold.From, hold.To), curves[Channel.Speed], curves[Channel.Main..], [.. RecordingHolds.Limits(hold.Hold, judgement).SelectMany(PlotLimit.Of)]));
        }

        foreach (JudgedEngagement engagement in Engagements(recording.Session, judgement))
        {
            double took = engagement.TotalSeconds ?? ShortestEngagement;
            (double from, double to) = (engagement.StartSeconds - BeforeAnEngagement, engagement.StartSeconds + Math.Max(ShortestEngagement, 1.6 * took));
            TraceCurve[] curves = Curves(from, to);
            string total = engagement.TotalSeconds is double seconds ? Figure.WithUnit(seconds, "s") : "not filled";
            windows.Add(new PlotWindow(
                $"Engagement, {StepWords.Of(engagement.Gear)}, {total}", from, to, (engagement.StartSeconds, engagement.StartSeconds + took), curves[Channel.Speed], curves[Channel.Main..], []));
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

/// <param name="Curve">Which of the three pressures it limits, from 0 on.</param>
internal sealed record PlotLimit(int Curve, double Value)
{
    public static IEnumerable<PlotLimit> Of(Check check)
    {
        int curve = check.Quantity switch { "main" => 0, "clutch" => 1, "converter" => 2, _ => -1 };
        return curve < 0 ? [] : new[] { check.Min, check.Max }.OfType<double>().Select(value => new PlotLimit(curve, value));
    }
}
