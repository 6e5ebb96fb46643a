using System;
using System.Collections.Generic;
using System.Data.Common;
using System.IO;
using System.Linq;
using LoggerBox.Host.Releasing;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Archive.JobFiles;

/// <summary>Puts a job file that was checked whole into an archive, in one change: all of it or nothing. A second time it changes nothing.</summary>
public sealed class JobImport
{
    // A number beyond it was never given by an archive, and would use up the numbers of this one.
    private const long HighestKeptNumber = 1_000_000;

    private readonly ArchiveFile archive;
    private readonly JobFileReader file;
    private readonly Dictionary<string, string> ids = [];

    // Written or changed so far.
    private int rows;

    private JobImport(ArchiveFile archive, JobFileReader file)
    {
        this.archive = archive;
        this.file = file;
    }

    /// <summary>By the first bytes of its content, or where there is no telling by its name.</summary>
    public static bool IsJobFile(string path)
    {
        if (path.EndsWith(JobFileFormat.Extension, StringComparison.OrdinalIgnoreCase))
        {
            return true;
        }

        try
        {
            using FileStream file = new(path, FileMode.Open, FileAccess.Read);
            byte[] start = new byte[JobFileFormat.Magic.Length];

            // What is read of a pipe is gone for whoever reads it next.
            return file.CanSeek && file.ReadAtLeast(start, start.Length, throwOnEndOfStream: false) == start.Length && JobFileFormat.Magic.SequenceEqual(start);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            // Whoever reads it next says why it cannot be read.
            return false;
        }
    }

    /// <param name="openArchive">Called only once the file is known to be sound.</param>
    /// <param name="progress">Told how much of the file was checked, and how much there is.</param>
    /// <exception cref="UserErrorException">The file is refused, or contradicts the archive; nothing was written.</exception>
    public static ImportedJob Run(string path, Func<ArchiveFile> openArchive, Action<long, long>? progress = null)
    {
        try
        {
            using WatchedFile file = new(path, progress);
            return Run(file, Path.GetFileName(path), openArchive);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw JobFileErrors.CannotRead(path, error.Message);
        }
    }

    /// <param name="file">Must know its length.</param>
    /// <param name="name">The file's name in messages.</param>
    /// <param name="openArchive">Called only once the file is known to be sound.</param>
    /// <exception cref="UserErrorException">The file is refused, or contradicts the archive; nothing was written.</exception>
    public static ImportedJob Run(Stream file, string name, Func<ArchiveFile> openArchive)
    {
        JobFileReader reader = JobFileReader.Open(file, name);
        using ArchiveFile archive = openArchive();
        return archive.Change(connection => new JobImport(archive, reader).Into(connection));
    }

    private ImportedJob Into(DbConnection open)
    {
        JobFileContent content = file.Content;
        foreach (JobFileSession session in content.Sessions)
        {
            ids[session.Id] = TakeSession(open, session);
        }

        string job = TakeJob(open, content.Job);
        ids[content.Job.Id] = job;
        foreach (Correction correction in content.Corrections)
        {
            TakeCorrection(open, correction);
        }

        foreach (ArchivedCalibration one in content.Calibrations.Where(one => !CalibrationRows.Of(open, one.LoggerId).Contains(one)))
        {
            rows += CalibrationRows.Insert(open, one);
        }

        return new ImportedJob(job, content.Job.Id, rows > 0, [.. content.Sessions.Select(session => ids[session.Id])]);
    }

    private string TakeSession(DbConnection open, JobFileSession session)
    {
        List<ArchivedSession> there = SessionRows.OfIdentity(open, session.Identity);
        ArchivedSession? same = there.Find(row => row.Length == session.Length && row.Crc == session.Crc);
        if (same is not null)
        {
            return same.Id;
        }

        byte[] bytes = file.BytesOf(session);
        DecodedSession decoded = SessionDecoder.Decode(bytes);
        ArchivedSession? other = there.Find(row => IsSameRun(open, row, session.Identity, decoded));
        if (other is not null)
        {
            throw JobFileErrors.OtherBytes(file.Name, session.Identity.SessionNumber, other.Id);
        }

        rows++;
        return SessionRows.Insert(open, session.Identity, bytes, session.Crc, decoded, session.Origin, session.Source, session.Stored);
    }

    /// <summary>Recordings of other instruments have no logger, and a wiped logger counts from the beginning again: the start tells runs apart.</summary>
    private static bool IsSameRun(DbConnection open, ArchivedSession row, SessionIdentity identity, DecodedSession decoded) =>
        identity.LoggerId != 0
        && open.Scalar("SELECT coalesce(start_utc, 0) FROM sessions WHERE 'S' || id = @id", ("@id", row.Id)) == decoded.Session.Header.StartUtcSeconds;

    private string TakeJob(DbConnection open, Job job)
    {
        long row = open.Scalar("SELECT id FROM jobs WHERE uid = @uid", ("@uid", job.Uid));
        if (row == 0)
        {
            bool keepsNumber = RowId.TryParse(job.Id, 'J', out long number) && number <= HighestKeptNumber
                && open.Scalar("SELECT count(*) FROM jobs WHERE id = @id", ("@id", number)) == 0;
            row = open.Scalar(JobColumns.Insert, JobColumns.OfNew(keepsNumber ? number : null, job.Uid, job.Details, job.Opened));
            rows++;
        }

        Job there = JobRows.AsWritten(open, archive.Jobs.Find(open, RowId.Job(row)));
        foreach (JobSession session in job.Sessions)
        {
            string id = ids[session.Id];
            if (!there.Sessions.Any(member => member.Id == id && (member.Role != SessionRole.Any || session.Role == SessionRole.Any)))
            {
                rows += open.Execute(JobColumns.AddSession, JobColumns.OfSession(row, archive.Sessions.RowOf(open, id), session.Role, job.Opened));
            }
        }

        TakeGates(open, row, job.Gates, [.. there.Gates]);

        bool isNews = (job.Closed is not null && there.Closed is null) || (job.Cause.Length > 0 && there.Cause.Length == 0)
            || (job.Correction.Length > 0 && there.Correction.Length == 0);
        if (isNews)
        {
            rows += WriteClosing(open, row, job, there);
        }

        return RowId.Job(row);
    }

    // One by one: somebody may tick, withdraw and tick again within a second.
    private void TakeGates(DbConnection open, long row, IEnumerable<GateTick> gates, List<GateTick> there)
    {
        foreach (GateTick tick in gates.Where(tick => !there.Remove(tick)))
        {
            rows += GateRows.Insert(open, row, tick);
        }
    }

    // What this archive's people wrote stands; the file fills what they left open.
    private static int WriteClosing(DbConnection open, long row, Job job, Job there) => open.Execute(
        """
        UPDATE jobs SET closed_utc = coalesce(closed_utc, @closed), closed_offset_minutes = coalesce(closed_offset_minutes, @offset),
            cause = @cause, correction = @correction
        WHERE id = @id
        """,
        ("@id", row),
        ("@closed", job.Closed?.ToUnixTimeSeconds()),
        ("@offset", (long?)job.Closed?.Offset.TotalMinutes),
        ("@cause", there.Cause.Length > 0 ? there.Cause : job.Cause),
        ("@correction", there.Correction.Length > 0 ? there.Correction : job.Correction));

    private void TakeCorrection(DbConnection open, Correction correction)
    {
        if (!ids.TryGetValue(correction.Subject, out string? subject))
        {
            throw JobFileErrors.Wrong(file.Name, "a correction is of nothing in it");
        }

        Correction own = correction with { Subject = subject };
        if (!CorrectionRows.Of(open, subject).Contains(own))
        {
            rows += CorrectionRows.Insert(open, own);
        }
    }
}

/// <param name="Id">The job's id here.</param>
/// <param name="IdInFile">Its id in the archive that wrote the file.</param>
/// <param name="Changed">False where the archive had all of it already.</param>
/// <param name="Sessions">Their ids here, in the job's order.</param>
public sealed record ImportedJob(string Id, string IdInFile, bool Changed, IReadOnlyList<string> Sessions);
