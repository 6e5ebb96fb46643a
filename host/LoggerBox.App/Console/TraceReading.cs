using System.IO;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Traces;
using LoggerBox.Protocol.Records;
using LoggerBox.TruckSimulator.Replay;

namespace LoggerBox.App.Console;

/// <summary>A trace file through the capture engine, as if a logger had recorded it.</summary>
internal static class TraceReading
{
    /// <param name="plan">What the logger would have been told of the truck.</param>
    public static SubjectRecording Read(TraceSource source, PlanRecord plan, Terminal terminal)
    {
        string name = Path.GetFileName(source.Path);
        Trace trace = TraceReader.Read(source, (done, whole) => terminal.Progress.Show(ProgressMessages.Reading(name), done, whole));
        foreach (string note in trace.Notes)
        {
            terminal.Error.WriteLine(note);
        }

        TraceCounts counts = TraceCounts.From(trace);
        var recording = new Recording(
            counts.Microseconds,
            [counts.SpeedTenths, .. counts.PressureCounts],
            counts.Gears,
            counts.Steps,
            counts.OilTenthsCelsius,
            counts.Calibrations,
            counts.HasGears);
        byte[] records = ReplayRun.Capture(recording, plan, row => terminal.Progress.Show(ProgressMessages.Capturing(name), row, trace.Count));
        return new SubjectRecording(trace.FileName, records, SessionDecoder.Decode(records).Session);
    }
}
