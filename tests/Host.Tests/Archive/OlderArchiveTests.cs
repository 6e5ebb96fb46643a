using System;
using System.IO;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Tests.Sessions;
using Microsoft.Data.Sqlite;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>An archive of an older program is brought up to date where it lies, and keeps what it holds.</summary>
public sealed class OlderArchiveTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.Zero);

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    /// <summary>The schema before there were gates: its closed jobs were never released by anybody that the archive knows.</summary>
    [Fact]
    public void The_second_schema_becomes_the_present_one_and_its_jobs_have_no_gates()
    {
        string path = folder.File("archive.sqlite");
        Write(path, Script("001.sql") + Script("002.sql") + """
            PRAGMA application_id = 0x4C674278; PRAGMA user_version = 2;
            INSERT INTO jobs (truck, serial, fuel, complaint, technician, sheet_name, sheet_text, oil_level, oil_look, oil_read, opened_utc, opened_offset_minutes,
                uid, cause, correction, closed_utc, closed_offset_minutes)
            VALUES ('Old truck', '', '', '', '', '', '', '', '', '', 1772443800, 0, '0123456789abcdef0123456789abcdef', 'pump worn', 'replaced', 1772450000, -420);
            """);

        using ArchiveFile archive = ArchiveFile.OpenForReading(path);
        Job job = archive.Jobs.Load("J1");
        Assert.Equal(("0123456789abcdef0123456789abcdef", "pump worn", TimeSpan.FromHours(-7)), (job.Uid, job.Cause, job.Closed!.Value.Offset));
        Assert.Empty(job.Gates);
        Assert.False(job.Release.IsReleased);
        archive.Gates.Tick("J1", ["road-test"], "A. Fitter", "", Now);
        Assert.Equal("A. Fitter", Assert.Single(archive.Jobs.Load("J1").Gates).By);
    }

    [Fact]
    public void The_first_schema_becomes_the_present_one_with_its_jobs_and_sessions()
    {
        string path = folder.File("archive.sqlite");
        Write(path, Script("001.sql") + """
            PRAGMA application_id = 0x4C674278; PRAGMA user_version = 1;
            INSERT INTO jobs (truck, serial, fuel, complaint, technician, sheet_name, sheet_text, oil_level, oil_look, oil_read, opened_utc, opened_offset_minutes)
            VALUES ('Old truck', '', '', '', '', '', '', '', '', '', 1772443800, 0), ('Older truck', '', '', '', '', '', '', '', '', '', 1772443800, 0);
            """);

        using ArchiveFile archive = ArchiveFile.OpenForReading(path);
        string session = archive.Sessions.Add(RecordedBytes.Session(1, seed: 1, sampleSets: 5).ToArray(), SessionOrigin.Fetched, "COM3", Now).Id;
        archive.Jobs.AddSessions("J1", [session], Now, SessionRole.After);

        Assert.Equal(["Old truck", "Older truck"], archive.Jobs.All().Select(job => job.Details.Truck));
        Assert.Equal(2, archive.Jobs.All().Select(job => job.Uid).Where(uid => uid.Length == 32).Distinct().Count());
        Assert.Equal(SessionRole.After, Assert.Single(archive.Jobs.Load("J1").Sessions).Role);
    }

    private static string Script(string name)
    {
        using Stream script = typeof(ArchiveFile).Assembly.GetManifestResourceStream("LoggerBox.Host.Archive.Schema." + name)!;
        using StreamReader reader = new(script);
        return reader.ReadToEnd();
    }

    private static void Write(string path, string statements)
    {
        using SqliteConnection connection = new($"Data Source={path};Pooling=False");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // An older schema, as it was written.
        command.CommandText = statements;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
