using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Report;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Subjects;

/// <summary>Oil temperature as the recordings have it, from the coldest to the warmest of the steps with the engine running.</summary>
internal static class OilProbe
{
    public const string Label = "Oil temperature";

    public static IEnumerable<ReportFact> Facts(Subject subject)
    {
        foreach (SubjectRecording recording in subject.Recordings)
        {
            if (Range(recording.Session) is (double low, double high))
            {
                string of = subject.Recordings.Count == 1 ? "" : $" ({recording.Name})";
                string range = high - low < 0.05 ? FormattableString.Invariant($"{low:0.0} °C") : FormattableString.Invariant($"{low:0.0} to {high:0.0} °C");
                yield return new ReportFact(Label, $"{range}, {(recording.Session.Header.LoggerId == 0 ? "as recorded" : "by the logger's probe")}{of}");
            }
        }
    }

    /// <summary>A probe tells each change: what it told last before a hold still goes for its beginning.</summary>
    private static (double Low, double High)? Range(RecordedSession session)
    {
        EventRecord[] told = [.. session.Events.Where(one => one.Kind == EventKind.OilTemperature).OrderBy(one => one.Microseconds)];
        double[] seen = [.. session.Holds.Where(hold => hold.Step is not (Step.None or Step.Zero)).SelectMany(hold => During(told, hold))];
        return seen.Length == 0 ? null : (seen.Min(), seen.Max());
    }

    private static IEnumerable<double> During(EventRecord[] told, HoldRecord hold)
    {
        long end = hold.StartMicroseconds + (hold.DurationMilliseconds * 1000L);
        IEnumerable<EventRecord> within = told.Where(one => one.Microseconds > hold.StartMicroseconds && one.Microseconds <= end);
        return told.Where(one => one.Microseconds <= hold.StartMicroseconds).TakeLast(1).Concat(within).Select(one => one.Value / 10.0);
    }
}
