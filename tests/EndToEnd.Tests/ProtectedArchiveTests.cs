using System;
using System.IO;
using System.Linq;
using LoggerBox.Host.Archive;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>An archive that may be read and not written: another user's, or one on protected media.</summary>
public sealed class ProtectedArchiveTests : IDisposable
{
    private const UnixFileMode Readable = UnixFileMode.UserRead | UnixFileMode.GroupRead | UnixFileMode.OtherRead;
    private const UnixFileMode Enterable = Readable | UnixFileMode.UserExecute | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute;

    private readonly Workbench bench = new();

    private string Archive => bench.At("demo/archive.sqlite");

    public void Dispose()
    {
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(bench.At("demo"), Enterable | UnixFileMode.UserWrite);
        }

        bench.Dispose();
    }

    [UnprivilegedFact]
    public void It_is_listed_judged_reported_and_exported_and_only_a_verb_that_writes_says_so()
    {
        LoggerBoxCommand.Run("demo", "--out", bench.At("demo")).Expect(0);
        string judged = LoggerBoxCommand.Run("judge", "J1", "--archive", Archive, "--json").Expect(0).Out;
        byte[] before = File.ReadAllBytes(Archive);
        Protect();

        Assert.Contains("S1", UnprivilegedUser.Run("sessions", "--archive", Archive).Expect(0).Out, StringComparison.Ordinal);
        Assert.Contains("Sample truck", UnprivilegedUser.Run("job", "show", "J1", "--archive", Archive).Expect(0).Out, StringComparison.Ordinal);
        CommandResult judgement = UnprivilegedUser.Run("judge", "J1", "--archive", Archive, "--json").Expect(0);
        Assert.Equal((judged, ""), (judgement.Out, judgement.Error));
        UnprivilegedUser.Run("report", "J1", "--archive", Archive, "--out", bench.At("out/r.html")).Expect(0);
        UnprivilegedUser.Run("export", "J1", "--archive", Archive, "--out", bench.At("out/j.lbjob")).Expect(0);
        UnprivilegedUser.Run("job", "close", "J1", "--archive", Archive).Refused(1, Archive, "cannot be written");
        UnprivilegedUser.Run("import", bench.At("out/j.lbjob"), "--archive", Archive).Refused(1, Archive, "cannot be written");

        Assert.Equal(before, File.ReadAllBytes(Archive));
        Assert.Equal(["archive.sqlite", "report.html", "sample-truck.toml"], Directory.GetFiles(bench.At("demo")).Select(Path.GetFileName).Order());
    }

    [UnprivilegedFact]
    public void One_that_was_not_closed_in_order_is_not_read_without_its_last_changes()
    {
        LoggerBoxCommand.Run("demo", "--out", bench.At("demo")).Expect(0);
        byte[] database;
        byte[] log;
        using (ArchiveFile open = ArchiveFile.Open(Archive))
        {
            open.Jobs.Create(new JobDetails(), DateTimeOffset.UnixEpoch);
            database = ReadShared(Archive);
            log = ReadShared(Archive + "-wal");
        }

        File.WriteAllBytes(Archive, database);
        File.WriteAllBytes(Archive + "-wal", log);
        Protect();

        UnprivilegedUser.Run("job", "show", "--archive", Archive).Refused(1, Archive, "archive.sqlite-wal", "copy it");
    }

    private void Protect()
    {
        // What the class promises is for users whom permissions stop: the attribute has seen to that.
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        File.SetUnixFileMode(Path.GetDirectoryName(bench.At("demo"))!, Enterable | UnixFileMode.UserWrite);
        foreach (string file in Directory.GetFiles(bench.At("demo")))
        {
            File.SetUnixFileMode(file, Readable);
        }

        File.SetUnixFileMode(bench.At("demo"), Enterable);
        Directory.CreateDirectory(bench.At("out"));
        File.SetUnixFileMode(bench.At("out"), Enterable | UnixFileMode.UserWrite | UnixFileMode.OtherWrite);
    }

    private static byte[] ReadShared(string path)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        byte[] bytes = new byte[file.Length];
        file.ReadExactly(bytes);
        return bytes;
    }
}
