using System;
using System.CommandLine;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Link;

namespace LoggerBox.App.Console;

/// <summary>What the logger holds, into the archive; safe to repeat.</summary>
internal static class FetchVerb
{
    public static Command Declare(Terminal terminal)
    {
        var port = SharedOptions.Port();
        var archive = SharedOptions.Archive();
        var json = SharedOptions.Json();
        var verb = new Command("fetch", Messages.FetchVerb) { port, archive, json };
        verb.SetAction(line =>
        {
            // The line first: a port that is not there must not leave a new, empty archive behind.
            using HostLine open = HostLine.Open(line.GetRequiredValue(port));
            var connection = new LoggerConnection(open);
            connection.Hello();
            using ArchiveFile file = ArchiveFile.Open(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            DownloadResult result = new SessionDownload(connection, file, SessionOrigin.Fetched, DateTimeOffset.Now).Run();
            Tell(terminal, file, result, line.GetValue(json));
            return CommandLine.Done;
        });
        return verb;
    }

    private static void Tell(Terminal terminal, ArchiveFile file, DownloadResult result, bool json)
    {
        foreach (string note in result.Notes)
        {
            terminal.Error.WriteLine(note);
        }

        if (json)
        {
            ListingJson.WriteArray(terminal.Out, result.Sessions, (writer, session) => ListingJson.Session(writer, file.Sessions.Find(session.Id)));
            return;
        }

        foreach (FetchedSession session in result.Sessions)
        {
            terminal.Out.WriteLine(Messages.Fetched(session.Id, session.Identity.SessionNumber, session.IsNew));
        }

        if (result.Sessions.Count == 0)
        {
            terminal.Error.WriteLine(Messages.LoggerEmpty);
        }
    }
}
