using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Globalization;
using System.Linq;
using System.Text.Json;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Report;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Subjects;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.App.Console;

/// <summary>What the archive holds.</summary>
internal static class SessionsVerb
{
    public static Command Declare(Terminal terminal)
    {
        var archive = SharedOptions.Archive();
        var json = SharedOptions.Json();
        var verb = new Command("sessions", Messages.SessionsVerb) { archive, json };
        verb.SetAction(line => Run(terminal, line.GetValue(archive) ?? ArchiveFile.DefaultPath, line.GetValue(json)));
        return verb;
    }

    public static void Print(Terminal terminal, ArchiveFile file, IReadOnlyList<ArchivedSession> sessions)
    {
        var table = new TextTable("lllrrll");
        table.Add("session", "recorded", "from", "seconds", "holds", "steps captured", "");
        foreach (ArchivedSession session in sessions)
        {
            table.Add(
                session.Id,
                session.Start is DateTimeOffset start ? JobWords.Moment(start) : "undated",
                PlainText.Of(session.Source),
                session.Duration.TotalSeconds.ToString("F0", CultureInfo.InvariantCulture),
                session.Holds.ToString(CultureInfo.InvariantCulture),
                string.Join(' ', StepsOf(session)),
                State(session, DecodedIfDamaged(file, session)));
        }

        table.WriteTo(terminal.Out, "");
    }

    public static IEnumerable<string> StepsOf(ArchivedSession session) =>
        Enum.GetValues<Step>().Where(step => step != Step.None && (session.StepsCaptured >> (int)step & 1) == 1).Select(StepCodes.Text);

    public static void WriteJson(Utf8JsonWriter writer, ArchiveFile file, ArchivedSession session) =>
        ListingJson.Session(writer, session, DecodedIfDamaged(file, session));

    private static int Run(Terminal terminal, string path, bool json)
    {
        using ArchiveFile file = ArchiveFile.OpenForReading(path);
        IReadOnlyList<ArchivedSession> sessions = file.Sessions.All();
        if (json)
        {
            ListingJson.WriteArray(terminal.Out, sessions, (writer, session) => WriteJson(writer, file, session));
        }
        else if (sessions.Count == 0)
        {
            terminal.Error.WriteLine(Messages.ArchiveEmpty(file.Path));
        }
        else
        {
            Print(terminal, file, sessions);
        }

        return CommandLine.Done;
    }

    /// <summary>Decoded only where damage is known: the list of a season of sound sessions costs no decoding.</summary>
    private static RecordedSession? DecodedIfDamaged(ArchiveFile file, ArchivedSession session) =>
        session.Complete && session.Damage.Any ? file.Sessions.Load(session.Id).Session : null;

    private static string Damage(ArchivedSession session, RecordedSession? decoded)
    {
        string records = session.Damage.Records > 0 ? $"{session.Damage.Records} records damaged" : $"{session.Damage.Bytes} bytes damaged";
        string gaps = decoded is null ? "" : string.Join(", ", decoded.Gaps.Where(gap => gap.Duration != TimeSpan.Zero).Select(GapWords.Lasting));
        return gaps.Length == 0 ? records : $"{records}: {gaps} missing";
    }

    private static string State(ArchivedSession session, RecordedSession? decoded) => session switch
    {
        { Complete: false } => $"arriving, {session.Received} of {session.Length} bytes: fetch again",
        { Damage.Any: true } => Damage(session, decoded),
        { Ended: false } => "cut: not closed in order",
        _ => "",
    };
}
