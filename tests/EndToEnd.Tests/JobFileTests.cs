using System;
using System.Diagnostics;
using System.IO;
using System.Threading.Tasks;
using LoggerBox.Host.Archive;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

public sealed class JobFileTests : IDisposable
{
    private const long MostMemory = 200_000_000;

    private readonly Workbench bench = new();

    private string First => Path.Combine(bench.At("demo"), "archive.sqlite");

    private string File => bench.At("job.lbjob");

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_job_is_judged_in_another_archive_as_in_its_own()
    {
        LoggerBoxCommand.Run("demo", "--cause", "pump-worn", "--out", bench.At("demo")).Expect(0);
        LoggerBoxCommand.Run("job", "add", "J1", "S1", "--as", "before", "--archive", First).Expect(0);
        LoggerBoxCommand.Run("export", "J1", "--archive", First, "--out", File).Expect(0);
        LoggerBoxCommand.Run("job", "new", "--archive", bench.Archive, "--truck", "another").Expect(0);

        Assert.Contains("J2  imported from job.lbjob (J1 where it comes from", Import().Expect(0).Out, StringComparison.Ordinal);
        Assert.Contains("already", Import().Expect(0).Out, StringComparison.Ordinal);

        string there = LoggerBoxCommand.Run("judge", "J1", "--archive", First, "--json").Expect(0).Out;
        Assert.Equal(there, LoggerBoxCommand.Run("judge", "J2", "--archive", bench.Archive, "--json").Expect(0).Out);
        Assert.Equal("pump-worn", new JudgementText(there).Leading);
        Assert.Contains("Before the repair", LoggerBoxCommand.Run("job", "show", "J2", "--archive", bench.Archive).Expect(0).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cut_file_or_one_of_something_else_is_refused_and_leaves_no_archive()
    {
        LoggerBoxCommand.Run("demo", "--out", bench.At("demo")).Expect(0);
        LoggerBoxCommand.Run("export", "J1", "--archive", First, "--out", File).Expect(0);
        byte[] whole = System.IO.File.ReadAllBytes(File);
        System.IO.File.WriteAllBytes(File, whole[..(whole.Length / 2)]);
        Import().Refused(1, "job.lbjob", "cut or damaged", "nothing was imported");
        System.IO.File.WriteAllText(File, "time_s,rpm\n0.1,700\n");
        Import().Refused(1, "job.lbjob", "no job file");
        System.IO.File.Delete(File);
        Import().Refused(1, "job.lbjob");
        LoggerBoxCommand.Run("export", "S1", "--archive", First, "--out", File).Refused(2, "S1", ".lbjob");
        LoggerBoxCommand.Run("export", "J1", "--archive", First, "--out", File, "--unit", "psi").Refused(2, "--unit", "job.lbjob");
        Assert.Equal(["demo"], bench.Files());
        LoggerBoxCommand.Run("export", "J1", "--archive", First, "--out", File).Expect(0);
        LoggerBoxCommand.Run("import", File, "--archive", bench.Archive, "--range-main", "0..500psi").Refused(2, "--range-main", "job.lbjob");
        Assert.False(System.IO.File.Exists(bench.Archive));
    }

    [Fact]
    public async Task The_longest_session_fits_into_memory()
    {
        byte[] bytes = new byte[48 * 1024 * 1024];
        new Random(7).NextBytes(bytes);
        RecordWriter writer = new();
        int length = writer.Write(new SessionHeader { LoggerId = 1, SessionNumber = 1 }, 1, 1, 0);
        writer.Bytes.AsSpan(0, length).CopyTo(bytes);
        using (ArchiveFile archive = ArchiveFile.Open(bench.At("first.sqlite")))
        {
            archive.Sessions.Add(bytes, SessionOrigin.Fetched, "COM3", DateTimeOffset.UnixEpoch);
            archive.Jobs.AddSessions(archive.Jobs.Create(new JobDetails(), DateTimeOffset.UnixEpoch), ["S1"], DateTimeOffset.UnixEpoch);
        }

        LoggerBoxCommand.Run("export", "J1", "--archive", bench.At("first.sqlite"), "--out", File).Expect(0);
        using Process import = LoggerBoxCommand.Start("import", File, "--archive", bench.Archive);
        Task<string> error = import.StandardError.ReadToEndAsync();
        long memory = PeakMemory.Of(import, TimeSpan.FromSeconds(120), out bool ended);
        Assert.True(ended, "import did not end");
        Assert.True(import.ExitCode == 0, await error);
        Assert.InRange(memory, 1, MostMemory);
        Assert.Equal(bytes, Assert.Single(RecordedCard.Sessions(bench.Archive)));
    }

    private CommandResult Import() => LoggerBoxCommand.Run("import", File, "--archive", bench.Archive);

    [LinuxFact]
    public void A_trace_that_comes_through_a_pipe_is_imported_from_its_first_line()
    {
        using var bench = new Workbench();
        using System.Diagnostics.Process shell = System.Diagnostics.Process.Start(
            "sh", ["-c", $"cat '{Recordings.Trace("healthy")}' | '{LoggerBoxCommand.Executable}' import /dev/stdin --archive '{bench.Archive}' > '{bench.At("said")}' 2>&1"]);
        shell.WaitForExit();
        Assert.True(shell.ExitCode == 0, System.IO.File.ReadAllText(bench.At("said")));
    }
}
