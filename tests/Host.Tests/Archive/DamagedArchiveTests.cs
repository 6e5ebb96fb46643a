using System;
using System.Collections.Generic;
using System.IO;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Archive.JobFiles;
using LoggerBox.Host.Tests.Archive.Places;
using LoggerBox.Host.Tests.Sessions;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>Rows that no program of ours wrote: each question is answered with a sentence, and nothing is allocated by what a row only claims.</summary>
public abstract class DamagedArchiveTests : StoreTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.Zero);

    private readonly byte[] bytes = RecordedBytes.Session(7, seed: 1).ToArray();

    protected DamagedArchiveTests(ArchivePlace place)
        : base(place)
    {
        using ArchiveFile archive = place.Open();
        archive.Sessions.Add(bytes, SessionOrigin.Fetched, "COM3", Now);
        archive.Jobs.Create(new JobDetails(Truck: "Sample truck"), Now);
        archive.Jobs.AddSessions("J1", ["S1"], Now);
        archive.Corrections.DateSession("S1", Now, "A. Fitter", "clock was empty", Now);
    }

    [StoreTheory]
    [InlineData("sessions", "source", "NULL")]
    [InlineData("sessions", "stored_utc", "NULL")]
    [InlineData("sessions", "stored_utc", "9223372036854775807")]
    [InlineData("sessions", "stored_offset_minutes", "100000")]
    [InlineData("sessions", "duration_ms", "9223372036854775807")]
    [InlineData("sessions", "logger_id", "NULL")]
    [InlineData("jobs", "truck", "NULL")]
    [InlineData("jobs", "opened_utc", "NULL")]
    [InlineData("jobs", "opened_offset_minutes", "9223372036854775807")]
    [InlineData("corrections", "made_utc", "NULL")]
    [InlineData("job_sessions", "session", "NULL")]
    public void A_row_that_cannot_be_is_told_as_damage(string table, string column, string value)
    {
        Place.Damage("archive", table, $"UPDATE {table} SET {column} = {value}");
        using ArchiveFile archive = OpenDamaged();
        List<string> said = Refusals(archive);
        Assert.NotEmpty(said);
        Assert.All(said, sentence => Assert.Contains($"The archive {archive.Path} is damaged", sentence, StringComparison.Ordinal));
    }

    [StoreTheory]
    [InlineData("sessions", "UPDATE sessions SET length = 2000000000")]
    [InlineData("sessions", "UPDATE sessions SET length = 9223372036854775807")]
    [InlineData("sessions", "UPDATE sessions SET length = 10")]
    [InlineData("sessions", "UPDATE sessions SET crc = 5")]
    [InlineData("sessions", "UPDATE sessions SET crc = NULL")]
    [InlineData("parts", "UPDATE parts SET start = start + 1")]
    [InlineData("parts", "DELETE FROM parts")]
    [InlineData("parts", "UPDATE parts SET bytes = ZEROS")]
    public void A_session_whose_bytes_are_not_those_that_came_is_told_as_damaged_without_believing_its_length(string table, string statement)
    {
        Place.Damage("archive", table, statement.Replace("ZEROS", Place.Zeros, StringComparison.Ordinal));
        using ArchiveFile archive = OpenDamaged();
        long before = GC.GetAllocatedBytesForCurrentThread();
        UserErrorException error = Assert.Throws<UserErrorException>(() => archive.Sessions.Load("S1"));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 4 << 20);
        Assert.Contains(archive.Path, error.Message, StringComparison.Ordinal);
        Assert.Contains("damaged", error.Message, StringComparison.Ordinal);
    }

    private ArchiveFile OpenDamaged() => ArchiveFile.OpenForReading(Place.At("archive"));

    private static List<string> Refusals(ArchiveFile archive)
    {
        List<string> said = [];
        foreach (Action question in (Action[])[
            () => archive.Sessions.All(), () => archive.Sessions.Load("S1"), () => archive.Jobs.All(), () => archive.Corrections.Of("S1"),
            () => JobFileWriter.Write(archive, "J1", new MemoryStream())])
        {
            try
            {
                question();
            }
            catch (UserErrorException error)
            {
                said.Add(error.Message);
            }
        }

        return said;
    }
}

public sealed class DamagedArchiveTestsInSqlite() : DamagedArchiveTests(new SqlitePlace());

[InPostgres]
public sealed class DamagedArchiveTestsInPostgres() : DamagedArchiveTests(new PostgresPlace());
