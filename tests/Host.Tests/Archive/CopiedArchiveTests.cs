using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Archive.JobFiles;
using LoggerBox.Host.Tests.Archive.Places;
using LoggerBox.Host.Tests.Sessions;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>A copy of an archive holds all of it, in a file or on a server, and goes on from where it was made.</summary>
public abstract class CopiedArchiveTests : StoreTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.FromHours(-7));

    private readonly TemporaryFolder folder = new();
    private readonly ArchiveFile archive;

    protected CopiedArchiveTests(ArchivePlace place)
        : base(place)
    {
        archive = place.Open();
        for (uint number = 1; number <= 3; number++)
        {
            archive.Sessions.Add(RecordedBytes.Session(number, seed: 1, sampleSets: 20_000).ToArray(), SessionOrigin.Fetched, "COM3", Now);
        }

        archive.Incoming.StorePart(archive.Incoming.Begin(new SessionIdentity(1, 2, 3), 5000, SessionOrigin.Fetched, "COM3", Now), 100, new byte[700]);
        archive.Jobs.Create(new JobDetails(Truck: "Sample truck", HourMeter: 8123.4, Complaint: "no power\n“uphill”"), Now);
        archive.Jobs.AddSessions("J1", ["S3", "S1"], Now);
        archive.Gates.Tick("J1", ["chocks"], "A. Fitter", "", Now);
        archive.Corrections.DateSession("S3", Now.AddDays(-2), "A. Fitter", "clock was empty", Now);
        archive.Calibrations.Add(
        [
            new ArchivedCalibration(RecordedBytes.LoggerId, 2, 3196, 12801, 3_447_379, 8600, "TX-5", "DW-1", "C-77", new DateOnly(2026, 1, 10), null, null, "A", "1 2", Now),
        ]);
    }

    protected override void Close()
    {
        archive.Dispose();
        folder.Dispose();
    }

    [StoreFact]
    public void In_a_file_it_is_the_same_and_goes_on()
    {
        string copy = folder.File("copy.sqlite");
        ArchiveBackup.Write(archive, copy);
        AssertSame(copy);
        Assert.Equal([copy], Directory.GetFiles(folder.Path));
        Assert.Contains("is there already", Assert.Throws<UserErrorException>(() => ArchiveBackup.Write(archive, copy)).Message, StringComparison.Ordinal);
    }

    [StoreFact]
    public void One_that_is_damaged_is_not_copied()
    {
        Place.Damage("archive", "parts", $"UPDATE parts SET bytes = {Place.Zeros}");
        Assert.Contains("was not kept", Assert.Throws<UserErrorException>(() => ArchiveBackup.Write(archive, folder.File("copy.sqlite"))).Message, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(folder.Path));
    }

    protected void OnAServerItIsTheSameAndGoesOn()
    {
        string copy = PostgresServer.Shared.Address(PostgresServer.Shared.NewDatabase());
        ArchiveBackup.Write(archive, copy);
        AssertSame(copy);
        string refusal = Assert.Throws<UserErrorException>(() => ArchiveBackup.Write(archive, copy)).Message;
        Assert.Contains("holds an archive already", refusal, StringComparison.Ordinal);
        Assert.DoesNotContain("s3cret", refusal, StringComparison.Ordinal);
    }

    private void AssertSame(string place)
    {
        using ArchiveFile copy = ArchiveFile.OpenExisting(place);
        Assert.Equal(archive.Sessions.All(), copy.Sessions.All());
        Assert.Equal(archive.Incoming.Missing("S4"), copy.Incoming.Missing("S4"));
        Assert.Equal(JobFile(archive), JobFile(copy));
        Assert.Equal(archive.Jobs.Load("J1").SessionIds, copy.Jobs.Load("J1").SessionIds);
        Assert.Equal("J2", copy.Jobs.Create(new JobDetails(), Now));
        copy.Jobs.AddSessions("J1", ["S2"], Now);
        copy.Gates.Withdraw("J1", ["chocks"], "A. Fitter", "", Now);
        copy.Corrections.DateSession("S3", Now, "A. Fitter", "again", Now);
        Assert.Equal(["S3", "S1", "S2"], copy.Jobs.Load("J1").SessionIds);
        Assert.Equal(Now, copy.Sessions.Find("S3").Start);
    }

    private static byte[] JobFile(ArchiveFile one)
    {
        using MemoryStream file = new();
        JobFileWriter.Write(one, "J1", file);
        return file.ToArray();
    }
}

public sealed class CopiedArchiveTestsInSqlite() : CopiedArchiveTests(new SqlitePlace())
{
    [PostgresFact]
    public void On_a_server_it_is_the_same_and_goes_on() => OnAServerItIsTheSameAndGoesOn();
}

[InPostgres]
public sealed class CopiedArchiveTestsInPostgres() : CopiedArchiveTests(new PostgresPlace())
{
    /// <summary>Every table with every column, so that neither database is forgotten when the schema grows.</summary>
    [PostgresFact]
    public void Both_databases_have_the_same_tables_and_columns()
    {
        using SqlitePlace file = new();
        file.Open().Dispose();
        string[] ours = Columns(file, "SELECT m.name || '.' || c.name FROM sqlite_schema m JOIN pragma_table_info(m.name) c WHERE m.type = 'table' AND m.name NOT LIKE 'sqlite%'");
        string[] theirs = Columns(
            Place, "SELECT table_name || '.' || column_name FROM information_schema.columns WHERE table_schema = current_schema() AND table_name <> 'loggerbox_archive' AND column_name <> 'rowid'");
        Assert.Equal(ours, theirs);
        Assert.Equal(ArchiveTable.All.Select(table => table.Name).Order(), ours.Select(name => name.Split('.')[0]).Distinct());
    }

    [PostgresFact]
    public void On_a_server_it_is_the_same_and_goes_on() => OnAServerItIsTheSameAndGoesOn();

    private static string[] Columns(ArchivePlace place, string query)
    {
        using var open = place.Connect("archive");
        List<string> names = open.Rows(query, row => row.GetString(0));
        return [.. names.Order(StringComparer.Ordinal)];
    }
}
