using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.Json;
using Microsoft.Data.Sqlite;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>`archive check` and `archive backup` on archives that are sound, damaged on the disk, and in use.</summary>
public sealed class ArchiveTests : IDisposable
{
    private readonly Workbench bench = new();

    public ArchiveTests()
    {
        Run("import", Recordings.Trace("healthy")).Expect(0);
        Run("job", "new", "--truck", "Sample truck").Expect(0);
    }

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_sound_archive_says_so()
    {
        Assert.Equal($"{bench.Archive}: 1 sessions and 1 jobs, all as they were written.\n", Run("archive", "check").Expect(0).Out);
        Assert.Empty(JsonDocument.Parse(Run("archive", "check", "--json").Expect(0).Out).RootElement.EnumerateArray());
    }

    [Fact]
    public void One_wrong_bit_on_the_disk_is_found_and_named()
    {
        byte[] recorded = RecordedCard.Sessions(bench.Archive).Single();
        byte[] file = File.ReadAllBytes(bench.Archive);

        // A stretch of the session that lies whole in a page of the file; SQLite itself does not look at it.
        int at = file.AsSpan().IndexOf(recorded.AsSpan(20_000, 64));
        Assert.True(at > 0);
        file[at + 30] ^= 4;
        File.WriteAllBytes(bench.Archive, file);
        CommandResult check = Run("archive", "check");
        check.Refused(1, bench.Archive, "damaged in 1 places");
        Assert.StartsWith("S1: ", check.Out, StringComparison.Ordinal);
        Assert.Contains("restore the archive from a copy", check.Out, StringComparison.Ordinal);
        JsonElement only = JsonDocument.Parse(Run("archive", "check", "--json").Expect(1).Out).RootElement.EnumerateArray().Single();
        Assert.Equal("S1", only.GetProperty("where").GetString());

        Run("archive", "backup", bench.At("copy.sqlite")).Refused(1, "S1", "was not kept");
        Assert.DoesNotContain(bench.Files(), name => name.Contains("copy", StringComparison.Ordinal));
    }

    [Fact]
    public void A_copy_holds_the_same_and_never_takes_the_place_of_a_file()
    {
        string copy = bench.At("copy.sqlite");
        using (SqliteConnection other = new($"Data Source={bench.Archive};Pooling=False"))
        {
            // Another program in the middle of a change: the copy is of the moment before.
            other.Open();
            using SqliteTransaction change = other.BeginTransaction();
            using SqliteCommand command = other.CreateCommand();
            command.CommandText = "UPDATE jobs SET technician = 'nobody yet'";
            command.ExecuteNonQuery();
            Assert.Contains("1 sessions and 1 jobs, read back and compared", Run("archive", "backup", copy).Expect(0).Out, StringComparison.Ordinal);
        }

        Assert.Equal(RecordedCard.Sessions(bench.Archive), RecordedCard.Sessions(copy));
        Assert.Equal(Run("job", "show", "J1").Out, LoggerBoxCommand.Run("job", "show", "J1", "--archive", copy).Expect(0).Out);
        byte[] before = File.ReadAllBytes(copy);
        Run("archive", "backup", copy).Refused(1, copy, "name a new file");
        Assert.Equal(before, File.ReadAllBytes(copy));
        Run("archive", "backup", bench.At("no folder/copy.sqlite")).Refused(1, "no folder");
        Assert.DoesNotContain(bench.Files(), name => name.EndsWith(".part", StringComparison.Ordinal));
    }

    private CommandResult Run(params string[] words) => LoggerBoxCommand.Run([.. words, "--archive", bench.Archive]);
}
