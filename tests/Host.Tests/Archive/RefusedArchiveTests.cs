using System;
using System.IO;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Tests.Sessions;
using Microsoft.Data.Sqlite;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

public sealed class RefusedArchiveTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.Zero);

    private readonly TemporaryFolder folder = new();
    private readonly string path;

    public RefusedArchiveTests() => path = folder.File("archive.sqlite");

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(1)]
    [InlineData(40)]
    [InlineData(5000)]
    public void A_file_that_is_no_database_is_refused_and_left_as_it_is(int length)
    {
        byte[] text = Enumerable.Repeat((byte)'x', length).ToArray();
        File.WriteAllBytes(path, text);

        Assert.Equal($"{path} is no SQLite file: nothing was changed; name another file with --archive.", Refusal());
        Assert.Equal(text, File.ReadAllBytes(path));
        Assert.Equal([path], Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void Another_programs_database_is_refused_and_left_as_it_is()
    {
        Execute("CREATE TABLE customers (name TEXT)");
        byte[] before = File.ReadAllBytes(path);

        Assert.Contains("SQLite file of another program", Refusal(), StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(path));
    }

    [Fact]
    public void A_cut_archive_is_damaged_and_says_so()
    {
        using (ArchiveFile archive = ArchiveFile.Open(path))
        {
            archive.Sessions.Add(RecordedBytes.Session(1, seed: 1, sampleSets: 5000).ToArray(), SessionOrigin.Fetched, "COM3", Now);
        }

        using (FileStream file = new(path, FileMode.Open))
        {
            file.SetLength(file.Length / 8192 * 4096);
        }

        string refusal = Assert.Throws<UserErrorException>(() =>
        {
            using ArchiveFile archive = ArchiveFile.Open(path);
            archive.Sessions.Load("S1");
        }).Message;
        Assert.Contains($"The archive {path} is damaged", refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_in_the_archives_place_is_refused()
    {
        Directory.CreateDirectory(path);
        Assert.Contains("cannot be opened", Refusal(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_in_the_folders_place_is_refused()
    {
        File.WriteAllText(path, "");
        string inside = Path.Combine(path, "archive.sqlite");
        Assert.Contains(inside, Assert.Throws<UserErrorException>(() => ArchiveFile.Open(inside)).Message, StringComparison.Ordinal);
    }

    private string Refusal() => Assert.Throws<UserErrorException>(() => ArchiveFile.Open(path)).Message;

    private void Execute(string sql)
    {
        using SqliteConnection connection = new($"Data Source={path};Pooling=False");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // Constants of this file.
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
