using System;
using System.Collections.Generic;
using System.CommandLine;
using LoggerBox.App.Cards;
using LoggerBox.Host;
using LoggerBox.Host.Archive;

namespace LoggerBox.App.Console;

/// <summary>What the logger, or its pulled card, holds, into the archive; safe to repeat.</summary>
internal static class FetchVerb
{
    public static Command Declare(Terminal terminal)
    {
        var port = SharedOptions.Port();
        port.Required = false;
        var card = SharedOptions.NotEmpty(new Option<string?>("--card") { Description = Messages.CardOption, HelpName = "DIR" });
        var archive = SharedOptions.Archive();
        var json = SharedOptions.Json();
        var verb = new Command("fetch", Messages.FetchVerb) { port, card, archive, json };
        verb.Validators.Add(words =>
        {
            if (words.GetValue(port) is null == words.GetValue(card) is null)
            {
                words.AddError(Messages.PortOrCard);
            }
        });
        verb.SetAction(line =>
        {
            string file = line.GetValue(archive) ?? ArchiveFile.DefaultPath;
            if (line.GetValue(card) is string folder)
            {
                OfCard(terminal, folder, file, line.GetValue(json));
            }
            else
            {
                OfPort(terminal, line.GetValue(port)!, file, line.GetValue(json));
            }

            return CommandLine.Done;
        });
        return verb;
    }

    private static void OfCard(Terminal terminal, string folder, string path, bool json)
    {
        // The card first: what is no card must not leave a new, empty archive behind.
        using CardFile card = CardSearch.Open(folder);
        var fetch = new CardFetch(card);
        using ArchiveFile file = ArchiveFile.Open(path);
        CardResult result = fetch.Run(file, DateTimeOffset.Now, progress => terminal.Progress.Show(ProgressMessages.Fetching(progress.SessionNumber), progress.Received, progress.Length, isBytes: true));
        Tell(terminal, file, result.Sessions, result.Notes, json, Messages.TakenFromCard);
        if (result.Sessions.Count == 0)
        {
            terminal.Error.WriteLine(Messages.CardEmpty(card.Path));
        }

        if (result.Failure is not null)
        {
            throw new UserErrorException(result.Failure);
        }
    }

    private static void OfPort(Terminal terminal, string port, string path, bool json)
    {
        using var cable = CableFetch.Open(port, terminal);
        using ArchiveFile file = ArchiveFile.Open(path);
        (IReadOnlyList<TakenSession> sessions, IReadOnlyList<string> notes) = cable.Run(file);
        Tell(terminal, file, sessions, notes, json, Messages.Fetched);
        if (sessions.Count == 0)
        {
            terminal.Error.WriteLine(Messages.LoggerEmpty);
        }
    }

    private static void Tell(
        Terminal terminal, ArchiveFile file, IReadOnlyList<TakenSession> sessions, IReadOnlyList<string> notes, bool json, Func<TakenSession, string> sentence)
    {
        foreach (string note in notes)
        {
            terminal.Error.WriteLine(note);
        }

        if (json)
        {
            ListingJson.WriteArray(terminal.Out, sessions, (writer, session) => SessionsVerb.WriteJson(writer, file, file.Sessions.Find(session.Id)));
            return;
        }

        foreach (TakenSession session in sessions)
        {
            terminal.Out.WriteLine(sentence(session));
        }
    }
}
