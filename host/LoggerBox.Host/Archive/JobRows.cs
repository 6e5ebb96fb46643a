using System;
using System.Collections.Generic;
using System.Data.Common;
using System.Linq;
using LoggerBox.Host.Releasing;

namespace LoggerBox.Host.Archive;

/// <summary>The work orders, and which sessions belong to which.</summary>
public sealed class JobRows
{
    private readonly ArchiveFile archive;

    internal JobRows(ArchiveFile archive) => this.archive = archive;

    /// <returns>The new job's id.</returns>
    /// <exception cref="UserErrorException">A text of it is too long.</exception>
    public string Create(JobDetails details, DateTimeOffset now) => JobTexts.TooLong(details) is string what
        ? throw ArchiveErrors.JobText(what)
        : archive.Change(open => RowId.Job(open.Scalar(JobColumns.Insert, JobColumns.OfNew(null, null, details, now))));

    public IReadOnlyList<Job> All() => archive.Read(open => open
        .Rows("SELECT * FROM jobs ORDER BY id", JobColumns.FromRow)
        .Select(job => Whole(open, job))
        .ToList());

    /// <exception cref="UserErrorException">There is no such job.</exception>
    public Job Load(string id) => archive.Read(open => Load(open, id));

    /// <summary>Adds sessions to a job, all or none; one that the job has already stays once, and takes the role where one is given.</summary>
    /// <exception cref="UserErrorException">No such job or session, or the job is closed.</exception>
    public void AddSessions(string id, IEnumerable<string> sessionIds, DateTimeOffset now, SessionRole role = SessionRole.Any) => archive.Change(open =>
    {
        Job job = Find(open, id);
        if (job.Closed is not null)
        {
            throw ArchiveErrors.JobClosed(job.Id);
        }

        foreach (string sessionId in sessionIds)
        {
            open.Execute(JobColumns.AddSession, JobColumns.OfSession(Row(job), archive.Sessions.RowOf(open, sessionId), role, now));
        }

        return true;
    });

    /// <summary>
    /// Closes a job without a release; one that is closed keeps its first date. What was found and done is written where it is given.
    /// </summary>
    /// <exception cref="UserErrorException">The truck is released, or the closed job has another cause or correction already.</exception>
    public void Close(string id, DateTimeOffset now, string cause = "", string correction = "") => archive.Change(open =>
    {
        Job job = Load(open, id);
        return job.Release.Release is GateTick release ? throw GateErrors.NotUnreleased(job.Id, release.By) : Close(open, job, now, cause, correction);
    });

    /// <summary>Closes a job and releases the truck. One that was closed without a release keeps its first date.</summary>
    /// <param name="by">Who releases it; null: nobody was named, which is refused with what is still missing.</param>
    /// <exception cref="UserErrorException">A closing gate is open, it has been released already, or nobody is named.</exception>
    public void Release(string id, string? by, DateTimeOffset now, string cause = "", string correction = "") => archive.Change(open =>
    {
        Job job = Load(open, id);
        if (job.Release.Release is GateTick release)
        {
            throw GateErrors.Released(job.Id, release.By);
        }

        if (job.Release.Open(GateStage.Closing) is { Count: > 0 } missing)
        {
            throw GateErrors.CannotRelease(job.Id, missing);
        }

        string name = by ?? throw GateErrors.NobodyReleases(job.Id);
        GateRows.Demand(name, "");
        GateRows.Insert(open, Row(job), new GateTick(Gate.ReleaseCode, Withdrawn: false, name.Trim(), "", now));
        return Close(open, job, now, cause, correction);
    });

    // Somebody has read what a closed job says: another word is a correction, with a name of its own.
    private static int Close(DbConnection open, Job job, DateTimeOffset now, string cause, string correction)
    {
        foreach ((string field, string written, string there) in ((string, string, string)[])[(JobField.Cause, cause, job.Cause), (JobField.Correction, correction, job.Correction)])
        {
            if (job.Closed is not null && written.Length > 0 && there.Length > 0 && written != there)
            {
                throw ArchiveErrors.WrittenInClosedJob(job.Id, field);
            }
        }

        return JobTexts.TooLong(cause, correction) is string what
            ? throw ArchiveErrors.JobText(what)
            : open.Execute(JobColumns.Close, JobColumns.OfClosing(Row(job), now, cause, correction));
    }

    internal Job Load(DbConnection open, string id) => WithTest(open, Whole(open, Find(open, id)));

    /// <summary>Before anything in it was put right: what another archive must get.</summary>
    internal Job AsWritten(string id) => archive.Read(open => AsWritten(open, Find(open, id)));

    private Job WithTest(DbConnection open, Job job)
    {
        ArchivedSession[] sessions = [.. job.SessionIds.Select(session => archive.Sessions.Find(open, session))];
        return sessions.Length == 0 ? job : job with { Test = new TestMoments(sessions.Min(row => row.Start ?? row.Stored), sessions.Min(row => row.Stored)) };
    }

    internal Job Find(DbConnection open, string id) =>
        open.Rows("SELECT * FROM jobs WHERE id = @id", JobColumns.FromRow, ("@id", Row(id))).FirstOrDefault()
        ?? throw ArchiveErrors.NoSuchJob(archive.Path, id);

    internal static long Row(Job job) => RowId.TryParse(job.Id, 'J', out long row) ? row : throw new ArgumentException(job.Id, nameof(job));

    private long Row(string id) => RowId.TryParse(id, 'J', out long row) ? row : throw ArchiveErrors.NoSuchJob(archive.Path, id);

    /// <summary>With what stands in other tables.</summary>
    private static Job Whole(DbConnection open, Job job) => CorrectedJob.Of(AsWritten(open, job), CorrectionRows.Of(open, job.Id));

    internal static Job AsWritten(DbConnection open, Job job) => job with
    {
        Sessions = open.Rows(
            "SELECT session, role FROM job_sessions WHERE job = @job ORDER BY rowid",
            row => new JobSession(RowId.Session(row.GetInt64(0)), JobColumns.Role(row.GetString(1))),
            ("@job", Row(job))),
        Gates = GateRows.Of(open, Row(job)),
    };
}
