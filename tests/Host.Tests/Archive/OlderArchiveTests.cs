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

    [Fact]
    public void The_first_schema_becomes_the_present_one_with_its_jobs_and_sessions()
    {
        string path = folder.File("archive.sqlite");
        using (SqliteConnection connection = new($"Data Source={path};Pooling=False"))
        {
            connection.Open();
            using SqliteCommand command = connection.CreateCommand();
            using Stream script = typeof(ArchiveFile).Assembly.GetManifestResourceStream("LoggerBox.Host.Archive.Schema.001.sql")!;
#pragma warning disable CA2100 // The first schema, as it was written.
            command.CommandText = new StreamReader(script).ReadToEnd() + """
                PRAGMA application_id = 0x4C674278; PRAGMA user_version = 1;
                INSERT INTO jobs (truck, serial, fuel, complaint, technician, sheet_name, sheet_text, oil_level, oil_look, oil_read, opened_utc, opened_offset_minutes)
                VALUES ('Old truck', '', '', '', '', '', '', '', '', '', 1772443800, 0), ('Older truck', '', '', '', '', '', '', '', '', '', 1772443800, 0);
                """;
#pragma warning restore CA2100
            command.ExecuteNonQuery();
        }

        using ArchiveFile archive = ArchiveFile.OpenForReading(path);
        string session = archive.Sessions.Add(RecordedBytes.Session(1, seed: 1, sampleSets: 5).ToArray(), SessionOrigin.Fetched, "COM3", Now).Id;
        archive.Jobs.AddSessions("J1", [session], Now, SessionRole.After);

        Assert.Equal(["Old truck", "Older truck"], archive.Jobs.All().Select(job => job.Details.Truck));
        Assert.Equal(2, archive.Jobs.All().Select(job => job.Uid).Where(uid => uid.Length == 32).Distinct().Count());
        Assert.Equal(SessionRole.After, Assert.Single(archive.Jobs.Load("J1").Sessions).Role);
    }
}
