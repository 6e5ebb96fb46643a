using LoggerBox.Host.Traces;

namespace LoggerBox.App.Console;

/// <summary>A trace file through the capture engine, as if a logger had recorded it.</summary>
internal static class TraceReading
{
    public static Subject Read(TraceSource source, Terminal terminal)
    {
        Trace trace = TraceReader.Read(source);
        foreach (string note in trace.Notes)
        {
            terminal.Error.WriteLine(note);
        }

        Unbuilt.Run("judge FILE");
        return new Subject(trace.FileName, []);
    }
}
