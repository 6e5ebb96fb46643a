using System;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Units;

namespace LoggerBox.Shop;

/// <summary>A job or session with its judgement.</summary>
/// <param name="Id">J1 or S1, as in the page's address; J1.before and J1.after are a job's sessions of before and after the repair.</param>
/// <param name="Subject">With the job whose sheet and facts it was judged by, where there is one.</param>
internal sealed record JudgedSubject(string Id, Subject Subject, Judgement Judgement, ReportDocument Document)
{
    private const string Before = ".before";
    private const string After = ".after";

    public Job? Job => Subject.Job;

    public static string IdOf(Job job, SessionRole role) => job.Id + (role == SessionRole.Before ? Before : After);

    /// <param name="unit">Null: the sheet's.</param>
    public static JudgedSubject Of(ArchiveFile file, string id, LoadedSessions sessions, PressureUnit? unit, DateTimeOffset now)
    {
        Subject subject = Find(file, id, sessions);
        DataSheet sheet = ArchivedSubjects.SheetOrBlank(subject.Job);
        Judgement judgement = Judge.Of(subject.Sessions, sheet, subject.Facts, unit ?? sheet.Unit);
        return new JudgedSubject(id, subject, judgement, subject.Report(judgement, now));
    }

    private static Subject Find(ArchiveFile file, string id, LoadedSessions sessions)
    {
        foreach ((string ending, SessionRole role) in ((string, SessionRole)[])[(Before, SessionRole.Before), (After, SessionRole.After)])
        {
            if (id.EndsWith(ending, StringComparison.Ordinal))
            {
                return ArchivedSubjects.OfJob(file, file.Jobs.Load(id[..^ending.Length]), role, sessions.Load);
            }
        }

        return RowId.IsJob(id) ? ArchivedSubjects.OfJob(file, file.Jobs.Load(id), sessions.Load) : OfSession(file, id, sessions);
    }

    /// <summary>A session by itself is judged by the sheet of the newest job that holds it.</summary>
    private static Subject OfSession(ArchiveFile file, string id, LoadedSessions sessions)
    {
        Subject alone = ArchivedSubjects.OfSession(file, id, sessions.Load);
        string row = alone.Recordings[0].Row!.Id;
        return alone with { Job = file.Jobs.All().LastOrDefault(job => job.SessionIds.Contains(row)) };
    }
}
