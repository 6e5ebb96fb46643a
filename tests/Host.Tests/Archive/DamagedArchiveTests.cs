using System;
using System.Collections.Generic;
using System.IO;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Archive.JobFiles;
using LoggerBox.Host.Tests.Sessions;
using Microsoft.Data.Sqlite;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>Rows that no program of ours wrote: each question is answered with a sentence, and nothing is allocated by what a row only claims.</summary>
public sealed class DamagedArchiveTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.Zero);

    private readonly TemporaryFolder folder = new();
    private readonly byte[] bytes = RecordedBytes.Session(7, seed: 1).ToArray();

    public DamagedArchiveTests()
    {
        using ArchiveFile archive = ArchiveFile.Open(Path);
        archive.Sessions.Add(bytes, SessionOrigin.Fetched, "COM3", Now);
        archive.Jobs.Create(new JobDetails(Truck: "Sample truck"), Now);
        archive.Jobs.AddSessions("J1", ["S1"], Now);
        archive.Corrections.DateSession("S1", Now, "A. Fitter", "clock was empty", Now);
    }

    private string Path => folder.File("archive.sqlite");

    public void Dispose() => folder.Dispose();

    [Theory]
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
        Damage(table, $"UPDATE {table} SET {column} = {value}");
        List<string> said = Refusals();
        Assert.NotEmpty(said);
        Assert.All(said, sentence => Assert.Contains($"The archive {Path} is damaged", sentence, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("sessions", "UPDATE sessions SET length = 2000000000")]
    [InlineData("sessions", "UPDATE sessions SET length = 9223372036854775807")]
    [InlineData("sessions", "UPDATE sessions SET length = 10")]
    [InlineData("sessions", "UPDATE sessions SET crc = 5")]
    [InlineData("sessions", "UPDATE sessions SET crc = NULL")]
    [InlineData("parts", "UPDATE parts SET start = start + 1")]
    [InlineData("parts", "DELETE FROM parts")]
    [InlineData("parts", "UPDATE parts SET bytes = zeroblob(length(bytes))")]
    public void A_session_whose_bytes_are_not_those_that_came_is_told_as_damaged_without_believing_its_length(string table, string statement)
    {
        Damage(table, statement);
        using ArchiveFile archive = ArchiveFile.OpenForReading(Path);
        long before = GC.GetAllocatedBytesForCurrentThread();
        UserErrorException error = Assert.Throws<UserErrorException>(() => archive.Sessions.Load("S1"));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 4 << 20);
        Assert.Contains(Path, error.Message, StringComparison.Ordinal);
        Assert.Contains("damaged", error.Message, StringComparison.Ordinal);
    }

    private List<string> Refusals()
    {
        using ArchiveFile archive = ArchiveFile.OpenForReading(Path);
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

    // A table made of a query has no types, no checks and no triggers.
    private void Damage(string table, string statement)
    {
        using SqliteConnection open = new($"Data Source={Path};Pooling=False;Foreign Keys=False");
        open.Open();
        using SqliteCommand command = open.CreateCommand();
        command.CommandText = $"CREATE TABLE loose AS SELECT * FROM {table}; DROP TABLE {table}; ALTER TABLE loose RENAME TO {table}; {statement}";
        command.ExecuteNonQuery();
    }
}
