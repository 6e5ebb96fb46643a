using System;
using System.Collections.Generic;
using System.Linq;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Host.Archive;

/// <summary>The work orders, and which sessions belong to which.</summary>
public sealed class JobRows
{
    private readonly ArchiveFile archive;

    internal JobRows(ArchiveFile archive) => this.archive = archive;

    /// <returns>The new job's id.</returns>
    public string Create(JobDetails details, DateTimeOffset now) =>
        archive.Change(open => RowId.Job(open.Scalar(JobColumns.Insert, JobColumns.OfNew(null, null, details, now))));

    public IReadOnlyList<Job> All() => archive.Read(open => open
        .Rows("SELECT * FROM jobs ORDER BY id", JobColumns.FromRow)
        .Select(job => WithSessions(open, job))
        .ToList());

    /// <exception cref="UserErrorException">There is no such job.</exception>
    public Job Load(string id) => archive.Read(open => WithSessions(open, Find(open, id)));

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
            open.Execute(JobColumns.AddSession, JobColumns.OfSession(Row(job.Id), archive.Sessions.RowOf(open, sessionId), role, now));
        }

        return true;
    });

    /// <summary>Closes a job; one that is closed keeps its first date. What was found and done is written where it is given.</summary>
    public void Close(string id, DateTimeOffset now, string cause = "", string correction = "") => archive.Change(open => open.Execute(
        JobColumns.Close, JobColumns.OfClosing(Row(Find(open, id).Id), now, cause, correction)));

    internal Job Find(SqliteConnection open, string id) =>
        open.Rows("SELECT * FROM jobs WHERE id = $id", JobColumns.FromRow, ("$id", Row(id))).FirstOrDefault()
        ?? throw ArchiveErrors.NoSuchJob(archive.Path, id);

    private long Row(string id) => RowId.TryParse(id, 'J', out long row) ? row : throw ArchiveErrors.NoSuchJob(archive.Path, id);

    internal Job WithSessions(SqliteConnection open, Job job) => job with
    {
        Sessions = open.Rows(
            "SELECT session, role FROM job_sessions WHERE job = $job ORDER BY rowid",
            row => new JobSession(RowId.Session(row.GetInt64(0)), JobColumns.Role(row.GetString(1))),
            ("$job", Row(job.Id))),
    };
}
