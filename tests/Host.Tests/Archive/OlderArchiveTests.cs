using System;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Tests.Archive.Places;
using LoggerBox.Host.Tests.Sessions;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>An archive of an older program is brought up to date where it lies, and keeps what it holds.</summary>
public abstract class OlderArchiveTests(ArchivePlace place) : StoreTests(place)
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.Zero);

    /// <summary>The schema before there were gates: its closed jobs were never released by anybody that the archive knows.</summary>
    [StoreFact]
    public void The_second_schema_becomes_the_present_one_and_its_jobs_have_no_gates()
    {
        Place.MakeOlder("archive", 2, """
            INSERT INTO jobs (id, truck, serial, fuel, complaint, technician, sheet_name, sheet_text, oil_level, oil_look, oil_read, opened_utc, opened_offset_minutes,
                uid, cause, correction, closed_utc, closed_offset_minutes)
            VALUES (1, 'Old truck', '', '', '', '', '', '', '', '', '', 1772443800, 0, '0123456789abcdef0123456789abcdef', 'pump worn', 'replaced', 1772450000, -420);
            """);

        using ArchiveFile archive = ArchiveFile.OpenForReading(Place.At("archive"));
        Job job = archive.Jobs.Load("J1");
        Assert.Equal(("0123456789abcdef0123456789abcdef", "pump worn", TimeSpan.FromHours(-7)), (job.Uid, job.Cause, job.Closed!.Value.Offset));
        Assert.Empty(job.Gates);
        Assert.False(job.Release.IsReleased);
        archive.Gates.Tick("J1", ["road-test"], "A. Fitter", "", Now);
        Assert.Equal("A. Fitter", Assert.Single(archive.Jobs.Load("J1").Gates).By);
    }

    [StoreFact]
    public void The_first_schema_becomes_the_present_one_with_its_jobs_and_sessions()
    {
        Place.MakeOlder("archive", 1, """
            INSERT INTO jobs (id, truck, serial, fuel, complaint, technician, sheet_name, sheet_text, oil_level, oil_look, oil_read, opened_utc, opened_offset_minutes)
            VALUES (1, 'Old truck', '', '', '', '', '', '', '', '', '', 1772443800, 0), (2, 'Older truck', '', '', '', '', '', '', '', '', '', 1772443800, 0);
            """);

        using ArchiveFile archive = ArchiveFile.OpenForReading(Place.At("archive"));
        string session = archive.Sessions.Add(RecordedBytes.Session(1, seed: 1, sampleSets: 5).ToArray(), SessionOrigin.Fetched, "COM3", Now).Id;
        archive.Jobs.AddSessions("J1", [session], Now, SessionRole.After);

        Assert.Equal(["Old truck", "Older truck"], archive.Jobs.All().Select(job => job.Details.Truck));
        Assert.Equal(2, archive.Jobs.All().Select(job => job.Uid).Where(uid => uid.Length == 32).Distinct().Count());
        Assert.Equal(SessionRole.After, Assert.Single(archive.Jobs.Load("J1").Sessions).Role);
    }
}

public sealed class OlderArchiveTestsInSqlite() : OlderArchiveTests(new SqlitePlace());

[InPostgres]
public sealed class OlderArchiveTestsInPostgres() : OlderArchiveTests(new PostgresPlace());
