using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
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
    private const int MostKept = 12;

    private readonly Lock gate = new();
    private readonly LinkedList<(Grounds Grounds, Judgement Judgement)> kept = [];

    /// <summary>A job's sessions of before or after the repair, as a page's address names them.</summary>
    public static string IdOf(Job job, SessionRole role) => job.Id + (role == SessionRole.Before ? Before : After);

    /// <param name="id">J1 or S1; J1.before and J1.after.</param>
    /// <param name="unit">Null: the sheet's.</param>
    public JudgedSubject Find(ArchiveFile file, string id, PressureUnit? unit)
    {
        Subject subject = Named(file, id);
        return new JudgedSubject(id, subject, Judged(subject, unit));
    }

    private Judgement Judged(Subject subject, PressureUnit? unit)
    {
        var grounds = new Grounds(subject.Facts, subject.Job?.Details.SheetName, subject.Job?.Details.SheetText, unit, string.Join(' ', subject.All.Select(recording => $"{recording.Name}:{recording.Row!.Crc}:{recording.Row.Start:u}").Concat(subject.Notes.Select(note => note.Text))));

        // Under the lock: who asks for the same meanwhile waits for it, rather than judging it once more.
        lock (gate)
        {
            if (kept.FirstOrDefault(one => one.Grounds == grounds) is { Judgement: not null } known)
            {
                return known.Judgement;
            }

            DataSheet sheet = ArchivedSubjects.SheetOrBlank(subject.Job);
            var judgement = subject.Judged(sheet, unit ?? sheet.Unit);
            kept.AddFirst((grounds, judgement));
            if (kept.Count > MostKept)
            {
                kept.RemoveLast();
            }

            return judgement;
        }
    }

    private Subject Named(ArchiveFile file, string id)
    {
        foreach ((string ending, SessionRole role) in ((string, SessionRole)[])[(Before, SessionRole.Before), (After, SessionRole.After)])
        {
            if (id.EndsWith(ending, StringComparison.Ordinal))
            {
                return ArchivedSubjects.OfJob(file, file.Jobs.Load(id[..^ending.Length]), role, sessions.Load);
            }
        }

        return RowId.IsJob(id) ? ArchivedSubjects.OfJob(file, file.Jobs.Load(id), sessions.Load) : OfSession(file, id);
    }

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
