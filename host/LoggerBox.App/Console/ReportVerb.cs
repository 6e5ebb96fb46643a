using System.CommandLine;

namespace LoggerBox.App.Console;

/// <summary>The printable report.</summary>
internal static class ReportVerb
{
    public static Command Declare(Terminal terminal)
    {
        var what = SharedOptions.What();
        var file = SharedOptions.OutFile(Messages.ReportOutOption);
        var sheet = SharedOptions.Sheet();
        var unit = SharedOptions.Unit();
        var archive = SharedOptions.Archive();
        var trace = new TraceOptions();
        var verb = new Command("report", Messages.ReportVerb) { what, file, sheet, unit, archive };
        trace.AddTo(verb);
        verb.SetAction(line => Unbuilt.Run("report"));
        return verb;
    }
}
