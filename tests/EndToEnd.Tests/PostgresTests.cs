using System;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Net.Http;
using System.Text.RegularExpressions;
using System.Threading.Tasks;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Tests.Archive.Places;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>The program with its archive on a PostgreSQL server, as a chain of shops has it.</summary>
public sealed class PostgresTests : IDisposable
{
    private const string Secret = "s3cret";

    private readonly Workbench bench = new();
    private readonly string archive = PostgresServer.Missing is null ? PostgresServer.Shared.Address(PostgresServer.Shared.NewDatabase()) : "";

    public void Dispose() => bench.Dispose();

    [PostgresFact]
    public async Task The_whole_job_is_done_on_a_server_as_in_a_file()
    {
        LoggerBoxCommand.Run("demo", "--cause", "pump-worn", "--out", bench.At("demo")).Expect(0);
        string sheet = Path.Combine(bench.At("demo"), "sample-truck.toml");
        using (SimulatedLogger logger = SimulatedLogger.Start("--cause", "pump-worn", "--tcp"))
        {
            Run("fetch", "--port", logger.Port);
            Assert.Contains("already", Run("fetch", "--port", logger.Port).Out, StringComparison.Ordinal);
        }

        Run("job", "new", "--truck", "Yard 4", "--serial", "SN-1", "--complaint", "no power; “weak”", "--sheet", sheet);
        Run("job", "add", "J1", "S1");
        Run("job", "gate", "J1", "chocks", "--by", "A. Tester");
        string judged = Run("judge", "J1", "--json").Out;
        Assert.Equal("pump-worn", new JudgementText(judged).Leading);
        Run("report", "J1", "--out", bench.At("r.html"));
        Assert.Contains("no power", File.ReadAllText(bench.At("r.html")), StringComparison.Ordinal);
        Run("report", "J1", "--out", bench.At("r.pdf"));
        Run("export", "J1", "--out", bench.At("j.lbjob"));
        Assert.Contains("already", Run("import", bench.At("j.lbjob")).Out, StringComparison.Ordinal);
        Assert.Contains("1 sessions and 1 jobs, all as they were written", Run("archive", "check").Out, StringComparison.Ordinal);

        LoggerBoxCommand.Run("import", bench.At("j.lbjob"), "--archive", bench.Archive).Expect(0);
        Assert.Equal(judged, LoggerBoxCommand.Run("judge", "J1", "--archive", bench.Archive, "--json").Expect(0).Out);
        Run("archive", "backup", bench.At("copy.sqlite"));
        Assert.Equal(judged, LoggerBoxCommand.Run("judge", "J1", "--archive", bench.At("copy.sqlite"), "--json").Expect(0).Out);
        Assert.Equal(Run("job", "show", "J1").Out, LoggerBoxCommand.Run("job", "show", "J1", "--archive", bench.At("copy.sqlite")).Expect(0).Out);

        string moved = PostgresServer.Shared.Address(PostgresServer.Shared.NewDatabase());
        Assert.DoesNotContain(Secret, LoggerBoxCommand.Run("archive", "backup", moved, "--archive", bench.At("copy.sqlite")).Expect(0).Out, StringComparison.Ordinal);
        Assert.Equal(judged, LoggerBoxCommand.Run("judge", "J1", "--archive", moved, "--json").Expect(0).Out);
        await TheShopPageShowsIt();
    }

    [PostgresFact]
    public void Programs_that_import_at_once_into_a_database_that_holds_nothing_yet_all_come_through()
    {
        string[] files = [.. ((string[])["healthy", "pump-worn", "stator-slipping"]).Select(Recordings.Trace)];
        Process[] imports = [.. files.Concat(files).Select(file => LoggerBoxCommand.Start("import", file, "--archive", archive))];
        string[] said = [.. imports.Select(import => import.StandardOutput.ReadToEnd() + import.StandardError.ReadToEnd())];
        foreach (Process import in imports)
        {
            import.WaitForExit();
            Assert.True(import.ExitCode == 0, string.Join('\n', said));
            import.Dispose();
        }

        Assert.Equal(files.Length, said.Count(line => line.Contains("already", StringComparison.Ordinal)));
        Assert.Equal(["S1", "S2", "S3"], RecordedCard.Rows(archive).Select(row => row.Id));
        Run("archive", "check");
    }

    [PostgresFact]
    public void A_server_that_falls_in_the_middle_of_an_import_is_told_and_the_import_is_whole_or_absent_and_can_be_repeated()
    {
        using PostgresServer server = new();
        LoggerBoxCommand.Run("import", Recordings.Trace("healthy"), "--archive", bench.Archive).Expect(0);
        LoggerBoxCommand.Run("job", "new", "--truck", "Sample truck", "--archive", bench.Archive).Expect(0);
        LoggerBoxCommand.Run("job", "add", "J1", "S1", "--archive", bench.Archive).Expect(0);
        LoggerBoxCommand.Run("export", "J1", "--out", bench.At("job.lbjob"), "--archive", bench.Archive).Expect(0);
        byte[] session = RecordedCard.Sessions(bench.Archive).Single();
        Stopwatch whole = Stopwatch.StartNew();
        LoggerBoxCommand.Run("import", bench.At("job.lbjob"), "--archive", server.Address(server.NewDatabase())).Expect(0);
        Random random = new(20_261_128);
        TimeSpan longest = whole.Elapsed;
        int refused = 0;
        for (int crash = 0; crash < 8; crash++)
        {
            string place = server.Address(server.NewDatabase());
            using Process import = LoggerBoxCommand.Start("import", bench.At("job.lbjob"), "--archive", place);
            System.Threading.Thread.Sleep(longest * random.NextDouble());
            server.Crash();
            string error = import.StandardError.ReadToEnd();
            import.WaitForExit();
            Assert.InRange(import.ExitCode, 0, 1);
            Assert.Matches(import.ExitCode == 0 ? "" : "was lost|No PostgreSQL server answers|starting or stopping", error.TrimEnd().Split('\n')[^1]);
            Assert.DoesNotContain(Secret, error, StringComparison.Ordinal);
            refused += import.ExitCode;
            using (ArchiveFile there = ArchiveFile.Open(place))
            {
                Assert.Equal(there.Sessions.All().Count, there.Jobs.All().Count);
                Assert.True(import.ExitCode == 1 || there.Jobs.All().Count == 1);
            }

            LoggerBoxCommand.Run("import", bench.At("job.lbjob"), "--archive", place).Expect(0);
            Assert.Equal(session, RecordedCard.Sessions(place).Single());
        }

        Assert.InRange(refused, 1, 8);
    }

    [PostgresFact]
    public void No_refusal_and_no_list_shows_the_password()
    {
        string nowhere = archive.Replace(":" + PostgresServer.Shared.Port, ":9", StringComparison.Ordinal);
        foreach ((int status, string[] words) in (ReadOnlySpan<(int, string[])>)[
            (1, ["sessions", "--json", "--archive", nowhere]), (1, ["archive", "check", "--json", "--archive", archive]), (1, ["archive", "check", "--archive", nowhere]),
            (2, ["sessions", archive]), (1, ["import", archive, "--archive", bench.Archive]), (2, ["sessions", "--archive", archive + "?sslmode=" + Secret]),
            (1, ["judge", archive, "--sheet", archive]), (1, ["archive", "backup", nowhere, "--archive", archive]), (1, ["serve", "--archive", nowhere])])
        {
            CommandResult result = LoggerBoxCommand.Run(words);
            result.Refused(status);
            Assert.DoesNotContain(Secret, result.Out + result.Error, StringComparison.Ordinal);
        }
    }

    private async Task TheShopPageShowsIt()
    {
        using Process shop = LoggerBoxCommand.Start("serve", "--archive", archive);
        try
        {
            string address = (await shop.StandardOutput.ReadLineAsync())!;
            using HttpClient visitor = new();
            string list = await visitor.GetStringAsync(new Uri(address));
            string job = await visitor.GetStringAsync(new Uri(new Uri(address), "/job/J1"));
            Assert.Contains("Yard 4", list, StringComparison.Ordinal);
            Assert.Contains("pump", job, StringComparison.Ordinal);
            Assert.DoesNotContain(Secret, list + job, StringComparison.Ordinal);
        }
        finally
        {
            shop.Kill();
            string error = await shop.StandardError.ReadToEndAsync();
            Assert.Matches(new Regex(@"The shop page shows postgresql://127\.0\.0\.1:\d+/shop\d+\."), error);
            Assert.DoesNotContain(Secret, error, StringComparison.Ordinal);
        }
    }

    private CommandResult Run(params string[] words)
    {
        CommandResult result = LoggerBoxCommand.Run([.. words, "--archive", archive]).Expect(0);
        Assert.DoesNotContain(Secret, result.Out + result.Error, StringComparison.Ordinal);
        return result;
    }
}
