using System;
using System.Data.Common;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Tests.Sessions;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>
/// SQLite is told how many pages there are, and refuses the first write beyond them, as it does on a full disk (SQLITE_FULL): at each page of an
/// import. Nothing of it is there afterwards, what was there before is, and with room the import goes through.
/// </summary>
public sealed class FullDiskTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.Zero);

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(2_000, 2)]
    [InlineData(150_000, 150)]
    public void An_import_that_finds_the_disk_full_at_any_page_leaves_nothing_and_can_be_repeated(int sampleSets, int fewestPages)
    {
        using ArchiveFile archive = ArchiveFile.Open(folder.File("archive.sqlite"));
        byte[] before = RecordedBytes.Session(1, seed: 1, sampleSets: 500).ToArray();
        byte[] coming = RecordedBytes.Session(2, seed: 2, sampleSets: sampleSets).ToArray();
        archive.Sessions.Add(before, SessionOrigin.Fetched, "COM3", Now);
        long pages = archive.Read(open => Pragma(open, "page_count"));
        int refused = 0;
        for (; !Added(archive, coming, pages + refused); refused++)
        {
            ArchivedSession only = Assert.Single(archive.Sessions.All());
            Assert.Equal(before, archive.Sessions.Bytes(only.Id));
        }

        Assert.True(refused >= fewestPages, $"refused at {refused} pages");
        Assert.Equal([before, coming], archive.Sessions.All().Select(row => archive.Sessions.Bytes(row.Id)));
        Assert.False(archive.Sessions.Add(coming, SessionOrigin.Fetched, "COM3", Now).IsNew);
    }

    private static bool Added(ArchiveFile archive, byte[] session, long mostPages)
    {
        archive.Read(open => Pragma(open, $"max_page_count = {mostPages}"));
        try
        {
            return archive.Sessions.Add(session, SessionOrigin.Fetched, "COM3", Now).IsNew;
        }
        catch (UserErrorException refusal)
        {
            Assert.Contains("no room left", refusal.Message, StringComparison.Ordinal);
            return false;
        }
    }

    private static long Pragma(DbConnection open, string words)
    {
        using DbCommand command = open.CreateCommand();
#pragma warning disable CA2100 // Written above.
        command.CommandText = "PRAGMA " + words;
#pragma warning restore CA2100
        return (long)command.ExecuteScalar()!;
    }
}
