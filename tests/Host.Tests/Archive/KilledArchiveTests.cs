using System;
using System.Globalization;
using System.IO;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Tests.Sessions;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>
/// A program that is killed leaves the database file and its write-ahead log as they are at that moment, the log cut at any byte.
/// Each cut is opened by the real code: what was committed is there, a change that was not is wholly absent, and adding it again is harmless.
/// A thousand cuts in each test run; LOGGERBOX_CUTS names another number.
/// </summary>
public sealed class KilledArchiveTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.Zero);

    private static readonly int Cuts = int.Parse(Environment.GetEnvironmentVariable("LOGGERBOX_CUTS") ?? "1000", CultureInfo.InvariantCulture);

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_log_cut_anywhere_leaves_an_archive_with_whole_changes_only()
    {
        string path = folder.File("archive.sqlite");
        byte[][] sessions = [.. Enumerable.Range(1, 2).Select(i => RecordedBytes.Session((uint)i, seed: i, sampleSets: 1500).ToArray())];
        using ArchiveFile running = ArchiveFile.Open(path);
        running.Sessions.Add(sessions[0], SessionOrigin.Fetched, "COM3", Now);
        long afterFirst = new FileInfo(path + "-wal").Length;
        running.Sessions.Add(sessions[1], SessionOrigin.Fetched, "COM3", Now);
        running.Jobs.AddSessions(running.Jobs.Create(new JobDetails(Truck: "Sample truck"), Now), ["S1", "S2"], Now);
        byte[] database = ReadWhileOpen(path);
        byte[] log = ReadWhileOpen(path + "-wal");

        int most = 0;
        string copy = folder.File("killed.sqlite");
        for (int i = 0; i <= Cuts; i++)
        {
            long cut = afterFirst + ((log.Length - afterFirst) * i / Cuts);
            File.Delete(copy + "-shm");
            File.WriteAllBytes(copy, database);
            File.WriteAllBytes(copy + "-wal", log[..(int)cut]);

            using ArchiveFile archive = ArchiveFile.OpenExisting(copy);
            int held = archive.Sessions.All().Count;
            Assert.InRange(held, 1, 2);
            Assert.All(archive.Sessions.All(), row => Assert.Equal(sessions[row.Identity.SessionNumber - 1], archive.Sessions.Load(row.Id).Bytes));
            Assert.All(archive.Jobs.All(), job => Assert.True(job.SessionIds.Count is 0 or 2));
            Assert.True(archive.Jobs.All().Count == 0 || held == 2);
            Assert.Equal(held == 1, archive.Sessions.Add(sessions[1], SessionOrigin.Fetched, "COM3", Now).IsNew);
            Assert.Equal(2, archive.Sessions.All().Count);
            most = Math.Max(most, held + archive.Jobs.All().Count);
        }

        Assert.Equal(3, most);
    }

    private static byte[] ReadWhileOpen(string path)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        byte[] bytes = new byte[file.Length];
        file.ReadExactly(bytes);
        return bytes;
    }
}
