using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Comparing;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Judging.FromJobs;

namespace LoggerBox.Host.Subjects;

/// <summary>All visits of one truck, which its serial tells from others of its kind.</summary>
public static class TruckVisits
{
    /// <summary>Its jobs in the order they were written.</summary>
    public static IReadOnlyList<Job> Jobs(ArchiveFile file, string serial)
    {
        ArgumentNullException.ThrowIfNull(file);
        return [.. file.Jobs.All().Where(job => string.Equals(job.Details.Serial, serial, StringComparison.OrdinalIgnoreCase))];
    }

    /// <summary>What each job with sessions measured.</summary>
    public static IReadOnlyList<Visit> Of(ArchiveFile file, IEnumerable<Job> jobs)
    {
        ArgumentNullException.ThrowIfNull(jobs);
        return [.. jobs.Where(job => job.SessionIds.Count > 0).Select(job => Of(file, job))];
    }

    private static Visit Of(ArchiveFile file, Job job)
    {
        Subject subject = ArchivedSubjects.OfJob(file, job);
        Evidence evidence = Judge.EvidenceOf(subject.Sessions, ArchivedSubjects.SheetOrBlank(job), subject.Facts);
        return new Visit(job.Id, job.Opened, job.Details.HourMeter, SheetReadings.Of(evidence));
    }
}
