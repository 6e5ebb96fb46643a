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
/// <param name="Id">J1 or S1, as in the page's address.</param>
/// <param name="Job">Whose sheet and facts it was judged by; null: none.</param>
internal sealed record JudgedSubject(string Id, Subject Subject, Job? Job, Judgement Judgement, ReportDocument Document)
{
    /// <summary>A session by itself is judged by the sheet of the newest job that holds it.</summary>
    public static JudgedSubject Of(ArchiveFile file, string id, LoadedSessions sessions, PressureUnit? unit, DateTimeOffset now)
    {
        if (RowId.IsJob(id))
        {
            Job job = file.Jobs.Load(id);
            return Of(id, ArchivedSubjects.OfJob(file, job, sessions.Load), unit, now);
        }

        Subject alone = ArchivedSubjects.OfSession(file, id, sessions.Load);
        return Of(id, alone with { Job = file.Jobs.All().LastOrDefault(job => job.SessionIds.Contains(alone.Recordings[0].Row!.Id)) }, unit, now);
    }

    public static JudgedSubject Of(string id, Subject subject, PressureUnit? unit, DateTimeOffset now)
    {
        DataSheet sheet = ArchivedSubjects.SheetOrBlank(subject.Job);
        Judgement judgement = Judge.Of(subject.Sessions, sheet, subject.Facts, unit ?? sheet.Unit);
        return new JudgedSubject(id, subject, subject.Job, judgement, subject.Report(judgement, now));
    }
}
