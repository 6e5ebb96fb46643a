using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Units;

namespace LoggerBox.Shop;

/// <summary>Finds what an address names, and judges it: anew whenever anything that the judgement rests on has changed, else as it was.</summary>
internal sealed class JudgedSubjects(LoadedSessions sessions)
{
    private const string Before = ".before";
    private const string After = ".after";
    private const int MostKept = 2 * ReadAhead.MostJobs;

    private readonly Recent<Grounds, Judgement> recent = new(_ => 1, MostKept);

    /// <summary>A job's sessions of before or after the repair, as a page's address names them.</summary>
    public static string IdOf(Job job, SessionRole role) => job.Id + (role == SessionRole.Before ? Before : After);

    /// <param name="id">J1 or S1; J1.before and J1.after.</param>
    /// <param name="unit">Null: the sheet's.</param>
    public JudgedSubject Find(ArchiveFile file, string id, PressureUnit? unit)
    {
        Subject subject = Named(file, id);
        return new JudgedSubject(id, subject, Judged(subject, unit));
    }

    /// <summary>What a job comes to, where its sessions are read already; else null.</summary>
    public string? Outcome(ArchiveFile file, Job job, PressureUnit? unit) =>
        job.SessionIds.Count > 0 && job.SessionIds.All(id => sessions.Holds(file, id)) ? Host.Report.Outcome.Headline(Find(file, job.Id, unit).Judgement) : null;

    private Judgement Judged(Subject subject, PressureUnit? unit)
    {
        var grounds = new Grounds(subject.Facts, subject.Job?.Details.SheetName, subject.Job?.Details.SheetText, unit, string.Join(' ', subject.All.Select(recording => $"{recording.Name}:{recording.Row!.Crc}:{recording.Row.Start:u}").Concat(subject.Notes.Select(note => note.Text))));

        return recent.Find(grounds, () =>
        {
            DataSheet sheet = ArchivedSubjects.SheetOrBlank(subject.Job);
            return subject.Judged(sheet, unit ?? sheet.Unit);
        });
    }

    /// <summary>Looks whether there is anything to judge, which takes no time.</summary>
    /// <exception cref="UserErrorException">There is no such job or session, or nothing in it, or not all of it has come.</exception>
    public static void Expect(ArchiveFile file, string id)
    {
        (string row, SessionRole role) = Parse(id);
        IReadOnlyList<string> ids = !RowId.IsJob(row) ? [row] : file.Jobs.Load(row) is var job && role == SessionRole.Any ? job.SessionIds : job.SessionIdsOf(role);
        if (ids.Count == 0)
        {
            throw new UserErrorException(ArchivedSubjects.Empty(row));
        }

        foreach (string session in ids)
        {
            file.Sessions.FindWhole(session);
        }
    }

    private Subject Named(ArchiveFile file, string id)
    {
        (string row, SessionRole role) = Parse(id);
        return !RowId.IsJob(row) ? OfSession(file, row)
            : role == SessionRole.Any ? ArchivedSubjects.OfJob(file, file.Jobs.Load(row), sessions.Load)
            : ArchivedSubjects.OfJob(file, file.Jobs.Load(row), role, sessions.Load);
    }

    private static (string Row, SessionRole Role) Parse(string id) =>
        id.EndsWith(Before, StringComparison.Ordinal) ? (id[..^Before.Length], SessionRole.Before)
        : id.EndsWith(After, StringComparison.Ordinal) ? (id[..^After.Length], SessionRole.After)
        : (id, SessionRole.Any);

    /// <summary>A session by itself is judged by the sheet of the newest job that holds it.</summary>
    private Subject OfSession(ArchiveFile file, string id)
    {
        Subject alone = ArchivedSubjects.OfSession(file, id, sessions.Load);
        string row = alone.Recordings[0].Row!.Id;
        return alone with { Job = file.Jobs.All().LastOrDefault(job => job.SessionIds.Contains(row)) };
    }

    /// <summary>All that a judgement rests on; the sessions' bytes by their sums.</summary>
    private sealed record Grounds(JobFacts Facts, string? SheetName, string? SheetText, PressureUnit? Unit, string Sessions);
}
