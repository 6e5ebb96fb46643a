using System.CommandLine;

namespace LoggerBox.App.Console;

/// <summary>What the archive holds.</summary>
internal static class SessionsVerb
{
    public static Command Declare(Terminal terminal)
    {
        var archive = SharedOptions.Archive();
        var json = SharedOptions.Json();
        var verb = new Command("sessions", Messages.SessionsVerb) { archive, json };
        verb.SetAction(line => Unbuilt.Run("sessions"));
        return verb;
    }
}
