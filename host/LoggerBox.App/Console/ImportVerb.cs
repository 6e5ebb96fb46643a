using System.CommandLine;

namespace LoggerBox.App.Console;

/// <summary>A trace file of any instrument, into the archive.</summary>
internal static class ImportVerb
{
    public static Command Declare(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = Messages.ImportArgument };
        var archive = SharedOptions.Archive();
        var trace = new TraceOptions();
        var verb = new Command("import", Messages.ImportVerb) { file, archive };
        trace.AddTo(verb);
        verb.SetAction(line => Unbuilt.Run("import"));
        return verb;
    }
}
