using System.CommandLine;
using System.Threading;

namespace LoggerBox.App.Console;

/// <summary>What the logger holds, into the archive; safe to repeat.</summary>
internal static class FetchVerb
{
    public static Command Declare(Terminal terminal, CancellationToken stop)
    {
        var port = SharedOptions.Port();
        var archive = SharedOptions.Archive();
        var json = SharedOptions.Json();
        var verb = new Command("fetch", Messages.FetchVerb) { port, archive, json };
        verb.SetAction(line => Unbuilt.Run("fetch"));
        return verb;
    }
}
