using System.CommandLine;

namespace LoggerBox.App.Console;

/// <summary>Judges a job, a session or a trace file.</summary>
internal static class JudgeVerb
{
    public static Command Declare(Terminal terminal)
    {
        var what = SharedOptions.What();
        var sheet = SharedOptions.Sheet();
        var unit = SharedOptions.Unit();
        var json = SharedOptions.Json();
        var archive = SharedOptions.Archive();
        var trace = new TraceOptions();
        var verb = new Command("judge", Messages.JudgeVerb) { what, sheet, unit, json, archive };
        trace.AddTo(verb);
        verb.SetAction(line => Unbuilt.Run("judge"));
        return verb;
    }
}
