using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;

namespace LoggerBox.Host.Subjects;

/// <summary>Jobs and sessions of the archive as what a judgement is of, with the sheet that belongs to them.</summary>
public static class ArchivedSubjects
{
    /// <summary>
    /// A job as the truck is now: where sessions have roles those of after the repair, with those of before it to compare with; else all.
    /// </summary>
    /// <param name="load">Where sessions are kept that were read before; null: each is read from the archive.</param>
    /// <exception cref="UserErrorException">The job has no session, or one that is not whole.</exception>
    public static Subject OfJob(ArchiveFile file, Job job, Func<ArchiveFile, string, LoadedSession>? load = null)
    {
        ArgumentNullException.ThrowIfNull(job);
        Subject judged = OfJob(file, job, job.JudgedRole, load);
        Subject whole = job.JudgedRole == SessionRole.After ? judged with { Before = Recordings(file, job, SessionRole.Before, load) } : judged;
        return whole with { Notes = [.. RoleNotes.Of(job, whole)] };
    }

    /// <summary>Those sessions of a job that were recorded before, or after, the repair.</summary>
    /// <exception cref="UserErrorException">It has none of that kind, or one that is not whole.</exception>
    public static Subject OfJob(ArchiveFile file, Job job, SessionRole role, Func<ArchiveFile, string, LoadedSession>? load = null)
    {
        ArgumentNullException.ThrowIfNull(job);
        SubjectRecording[] recordings = Recordings(file, job, role, load);
        return recordings.Length > 0
            ? new Subject($"job {job.Id}{RoleWords.After(role)}", recordings, job)
            : throw new UserErrorException(Empty(job.Id));
    }

    public static Subject OfSession(ArchiveFile file, string id, Func<ArchiveFile, string, LoadedSession>? load = null)
    {
        SubjectRecording recording = RecordingOf(file, id, load);
        return new Subject(recording.Name, [recording]);
    }

    /// <summary>The sheet that the job was written with, or one without any limit.</summary>
    public static DataSheet SheetOrBlank(Job? job) => OwnSheet(job) ?? new DataSheet { FileName = "" };

    /// <summary>The sheet that the job was written with; null where it was written without one.</summary>
    public static DataSheet? OwnSheet(Job? job) =>
        job?.Details is { SheetText.Length: > 0 } details ? DataSheetReader.Parse(details.SheetText, details.SheetName) : null;

    public static string Empty(string job) => $"Job {job} has no session yet: add one with `loggerbox job add {job} SESSION`.";

    private static SubjectRecording[] Recordings(ArchiveFile file, Job job, SessionRole role, Func<ArchiveFile, string, LoadedSession>? load) =>
        InOrderOfTime([.. job.SessionIdsOf(role).Select(id => RecordingOf(file, id, load, role))]);

    /// <summary>The last good hold of a step counts, whatever was added to the job first. An undated session leaves the order of adding.</summary>
    private static SubjectRecording[] InOrderOfTime(SubjectRecording[] recordings) => Array.TrueForAll(recordings, recording => recording.Row?.Start is not null)
        ? [.. recordings.OrderBy(recording => recording.Row!.Start)]
        : recordings;

    private static SubjectRecording RecordingOf(ArchiveFile file, string id, Func<ArchiveFile, string, LoadedSession>? load, SessionRole role = SessionRole.Any)
    {
        ArgumentNullException.ThrowIfNull(file);
        LoadedSession loaded = load is null ? file.Sessions.Load(id) : load(file, id);
        return new SubjectRecording($"session {loaded.Row.Id}{RoleWords.After(role)}", loaded.Bytes, loaded.Session, loaded.Row, file.Calibrations.Of(loaded.Row.Identity.LoggerId))
        {
            Role = role,
            Dated = file.Corrections.DateOf(loaded.Row.Id),
        };
    }
}
