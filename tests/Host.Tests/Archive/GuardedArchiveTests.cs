using System;
using System.Collections.Generic;
using System.Data.Common;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Tests.Archive.Places;
using LoggerBox.Host.Tests.Sessions;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>What no archive allows, wherever it lies.</summary>
public abstract class GuardedArchiveTests(ArchivePlace place) : StoreTests(place)
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.Zero);

    [StoreFact]
    public void An_archive_of_a_newer_program_is_refused()
    {
        Place.Open().Dispose();
        Place.SetVersion("archive", ArchiveSchema.Version + 1);
        Assert.Contains($"newer program (schema {ArchiveSchema.Version + 1}, this program knows {ArchiveSchema.Version})", Refusal(() => Place.Open()), StringComparison.Ordinal);
    }

    [StoreFact]
    public void Another_programs_tables_are_refused_and_left_as_they_are()
    {
        Place.Execute("archive", "CREATE TABLE customers (name TEXT)");
        Assert.Contains("of another program", Refusal(() => Place.Open()), StringComparison.Ordinal);
        Assert.ThrowsAny<DbException>(() => Place.Execute("archive", "SELECT * FROM jobs"));
    }

    [StoreFact]
    public void An_archive_that_another_program_holds_is_refused_after_a_wait()
    {
        Place.Open().Dispose();
        using ArchiveFile archive = ArchiveFile.Open(Place.At("archive"), TimeSpan.FromSeconds(1));
        using (Place.Hold("archive"))
        {
            Assert.Contains("in use by another program", Refusal(() => archive.Jobs.Create(new JobDetails(), Now)), StringComparison.Ordinal);
            Assert.Empty(archive.Jobs.All());
        }

        Assert.Equal("J1", archive.Jobs.Create(new JobDetails(), Now));
    }

    [StoreFact]
    public void Reading_an_archive_that_is_not_there_makes_none()
    {
        foreach (Func<ArchiveFile> open in (Func<ArchiveFile>[])[() => ArchiveFile.OpenExisting(Place.At("archive")), () => ArchiveFile.OpenForReading(Place.At("archive"))])
        {
            Assert.Contains("no archive", Refusal(() => open()), StringComparison.Ordinal);
        }
    }

    [StoreFact]
    public void What_is_recorded_can_be_neither_changed_nor_removed()
    {
        using ArchiveFile archive = Place.Open();
        archive.Sessions.Add(RecordedBytes.Session(1, seed: 1, sampleSets: 5).ToArray(), SessionOrigin.Fetched, "COM3", Now);
        archive.Corrections.DateSession("S1", Now, "A. Fitter", "clock was empty", Now);
        foreach ((string table, string column) in (ReadOnlySpan<(string, string)>)[("parts", "start"), ("corrections", "value")])
        {
            Assert.ThrowsAny<DbException>(() => Place.Execute("archive", $"UPDATE {table} SET {column} = {column}"));
            Assert.ThrowsAny<DbException>(() => Place.Execute("archive", $"DELETE FROM {table}"));
        }

        Assert.Contains("never changed", Assert.ThrowsAny<DbException>(() => Place.Execute("archive", "UPDATE parts SET start = 9")).Message, StringComparison.Ordinal);
        Assert.Contains("never removed", Assert.ThrowsAny<DbException>(() => Place.Execute("archive", "DELETE FROM parts")).Message, StringComparison.Ordinal);
    }

    [StoreFact]
    public void A_change_that_fails_on_its_way_leaves_nothing_and_its_number_is_given_again()
    {
        using ArchiveFile archive = Place.Open();
        Assert.Throws<InvalidTimeZoneException>(() => archive.Change<int>(open =>
        {
            Assert.Equal(1, open.Scalar(JobColumns.Insert, JobColumns.OfNew(null, null, new JobDetails(), Now)));
            throw new InvalidTimeZoneException();
        }));

        Assert.Empty(archive.Jobs.All());
        Assert.Equal("J1", archive.Jobs.Create(new JobDetails(), Now));
    }

    [StoreFact]
    public void A_row_that_belongs_to_nothing_is_found_by_the_check()
    {
        using ArchiveFile archive = Place.Open();
        archive.Sessions.Add(RecordedBytes.Session(1, seed: 1, sampleSets: 5).ToArray(), SessionOrigin.Fetched, "COM3", Now);
        archive.Jobs.AddSessions(archive.Jobs.Create(new JobDetails(), Now), ["S1"], Now);
        Assert.Empty(ArchiveCheck.Of(archive));
        Place.Orphan("archive", "job_sessions", "job");
        ArchiveDamage damage = Assert.Single(ArchiveCheck.Of(archive));
        Assert.Contains("a row of job_sessions belongs to nothing", damage.What, StringComparison.Ordinal);
    }

    [StoreFact]
    public void A_check_tells_how_much_of_the_sessions_it_has_read()
    {
        using ArchiveFile archive = Place.Open();
        byte[][] sessions = [RecordedBytes.Session(1, seed: 1, sampleSets: 50).ToArray(), RecordedBytes.Session(2, seed: 2, sampleSets: 500).ToArray()];
        foreach (byte[] session in sessions)
        {
            archive.Sessions.Add(session, SessionOrigin.Fetched, "COM3", Now);
        }

        List<(long Done, long Whole)> told = [];
        Assert.Empty(ArchiveCheck.Of(archive, (done, whole) => told.Add((done, whole))));
        long all = sessions.Sum(session => (long)session.Length);
        Assert.Equal([(0, all), (sessions[0].Length, all), (all, all)], told);
    }

    /// <summary>Each of several programs adds jobs and sessions at once: nobody is refused, and no number is given twice or left out.</summary>
    [StoreFact]
    public void Many_that_write_at_once_all_come_through()
    {
        const int Writers = 4;
        const int Each = 10;
        Place.Open().Dispose();
        string at = Place.At("archive");
        System.Threading.Tasks.Parallel.For(0, Writers, new System.Threading.Tasks.ParallelOptions { MaxDegreeOfParallelism = Writers }, writer =>
        {
            using ArchiveFile archive = ArchiveFile.Open(at, TimeSpan.FromSeconds(60));
            for (uint i = 0; i < Each; i++)
            {
                archive.Jobs.Create(new JobDetails(Truck: $"{writer}"), Now);
                archive.Sessions.Add(RecordedBytes.Session(i + 1, seed: 1, sampleSets: 5).ToArray(), SessionOrigin.Fetched, "COM3", Now);
            }
        });

        using ArchiveFile after = ArchiveFile.OpenForReading(at);
        Assert.Equal(Enumerable.Range(1, Writers * Each).Select(number => $"J{number}"), after.Jobs.All().Select(job => job.Id));
        Assert.Equal(Enumerable.Range(1, Each).Select(number => $"S{number}"), after.Sessions.All().Select(row => row.Id));
        Assert.Empty(ArchiveCheck.Of(after));
    }

    private static string Refusal(Action act) => Assert.Throws<UserErrorException>(act).Message;
}

public sealed class GuardedArchiveTestsInSqlite() : GuardedArchiveTests(new SqlitePlace());

[InPostgres]
public sealed class GuardedArchiveTestsInPostgres() : GuardedArchiveTests(new PostgresPlace());
