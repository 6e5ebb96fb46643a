using System.CommandLine;

namespace LoggerBox.App.Console;

/// <summary>A session of the archive as a trace file that any other program reads.</summary>
internal static class ExportVerb
{
    public static Command Declare(Terminal terminal)
    {
        var what = SharedOptions.What();
        var file = SharedOptions.OutFile(Messages.ExportOutOption);
        var unit = SharedOptions.Unit();
        var archive = SharedOptions.Archive();
        var verb = new Command("export", Messages.ExportVerb) { what, file, unit, archive };
        verb.SetAction(line => Unbuilt.Run("export"));
        return verb;
    }
}
