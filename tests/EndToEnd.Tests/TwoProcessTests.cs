using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using LoggerBox.Host.Archive;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

public class TwoProcessTests
{
    [Theory]
    [InlineData("pump-worn", 5, false)]
    [InlineData("healthy", 1, true)]
    public void Simulate_and_fetch_in_two_processes_give_the_bytes_of_the_demo(string cause, int seed, bool tcp)
    {
        using var bench = new Workbench();
        string number = seed.ToString(System.Globalization.CultureInfo.InvariantCulture);
        LoggerBoxCommand.Run("demo", "--cause", cause, "--seed", number, "--out", bench.At("demo")).Expect(0);

        using var logger = SimulatedLogger.Start(["--cause", cause, "--seed", number, .. tcp ? (string[])["--tcp"] : []]);
        Assert.StartsWith(tcp || OperatingSystem.IsWindows() ? "tcp:127.0.0.1:" : "/dev/", logger.Port, StringComparison.Ordinal);
        LoggerBoxCommand.Run("fetch", "--port", logger.Port, "--archive", bench.Archive).Expect(0);

        Assert.Equal(Bytes(Path.Combine(bench.At("demo"), "archive.sqlite")), Bytes(bench.Archive));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(0, logger.Stop());
        }
    }

    [Fact]
    public void Fetching_again_adds_nothing_and_a_job_of_what_was_fetched_is_judged_by_its_own_sheet()
    {
        using var bench = new Workbench();
        LoggerBoxCommand.Run("demo", "--cause", "regulator-low", "--seed", "9", "--out", bench.At("demo")).Expect(0);
        using var logger = SimulatedLogger.Start("--cause", "regulator-low", "--seed", "9", "--tcp");
        LoggerBoxCommand.Run("fetch", "--port", logger.Port, "--archive", bench.Archive).Expect(0);
        Assert.Contains("already", LoggerBoxCommand.Run("fetch", "--port", logger.Port, "--archive", bench.Archive).Expect(0).Out, StringComparison.Ordinal);
        Assert.Single(Listed(bench.Archive));

        string sheet = Path.Combine(bench.At("demo"), "sample-truck.toml");
        LoggerBoxCommand.Run("plan", "send", sheet, "--port", logger.Port).Expect(0);
        LoggerBoxCommand.Run("judge", "S1", "--archive", bench.Archive).Refused(1, "S1", "--sheet");
        LoggerBoxCommand.Run("job", "new", "--archive", bench.Archive, "--sheet", sheet, "--complaint", "no power").Expect(0);
        LoggerBoxCommand.Run("job", "add", "J1", "S1", "--archive", bench.Archive).Expect(0);
        var judgement = new JudgementText(LoggerBoxCommand.Run("judge", "J1", "--archive", bench.Archive, "--json", "--unit", "bar").Expect(0).Out);
        Assert.Equal("regulator-low", judgement.Leading);
        Assert.Equal("bar", judgement.Root.GetProperty("unit").GetString());

        LoggerBoxCommand.Run("report", "J1", "--archive", bench.Archive, "--out", bench.At("r.html")).Expect(0);
        Assert.Contains("no power", File.ReadAllText(bench.At("r.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_exported_is_judged_like_the_session_it_came_from()
    {
        using var bench = new Workbench();
        LoggerBoxCommand.Run("demo", "--cause", "forward-clutch-leak", "--out", bench.At("demo")).Expect(0);
        string archive = Path.Combine(bench.At("demo"), "archive.sqlite");
        string sheet = Path.Combine(bench.At("demo"), "sample-truck.toml");
        LoggerBoxCommand.Run("export", "J1", "--archive", archive, "--out", bench.At("t.csv"), "--unit", "kPa").Expect(0);
        var before = new JudgementText(LoggerBoxCommand.Run("judge", "J1", "--archive", archive, "--json").Expect(0).Out);
        var after = new JudgementText(LoggerBoxCommand.Run("judge", bench.At("t.csv"), "--sheet", sheet, "--json").Expect(0).Out);
        Assert.Equal(before.Leading, after.Leading);
        Assert.Equal(before.StepsThatCount.Order(), after.StepsThatCount.Order());
        double Main(JudgementText judgement) => judgement.Hold("hold-F").GetProperty("main").GetProperty("settled").GetDouble();
        Assert.Equal(Main(before), Main(after), 0.3);

        LoggerBoxCommand.Run("import", bench.At("t.csv"), "--archive", bench.Archive).Expect(0);
        Assert.Contains("already", LoggerBoxCommand.Run("import", bench.At("t.csv"), "--archive", bench.Archive).Expect(0).Out, StringComparison.Ordinal);
        Assert.Single(Listed(bench.Archive));
    }

    [Fact]
    public void A_logger_that_is_killed_while_it_records_keeps_all_but_its_last_block()
    {
        using var bench = new Workbench();
        string card = bench.At("card");
        using (var logger = SimulatedLogger.Start("--store", card, "--speed", "real", "--tcp"))
        {
            System.Threading.Thread.Sleep(TimeSpan.FromSeconds(8));
            logger.Kill();
        }

        using var restarted = SimulatedLogger.Start("--store", card, "--speed", "real", "--tcp");
        LoggerBoxCommand.Run("fetch", "--port", restarted.Port, "--archive", bench.Archive).Expect(0);
        JsonElement session = Assert.Single(Listed(bench.Archive));
        Assert.False(session.GetProperty("ended").GetBoolean());
        Assert.Equal(0, session.GetProperty("damaged_records").GetInt64());

        // 8 s at 50 sets a second, less the block of 128 sets that was open, and as much again for a busy machine.
        Assert.InRange(session.GetProperty("sample_sets").GetInt64(), 128, 8 * 50 + 50);
        Assert.True(session.GetProperty("sample_sets").GetInt64() >= (8 * 50) - (2 * 128), session.ToString());
    }

    [Fact]
    public void A_restarted_logger_has_its_session_under_the_same_name_and_does_not_record_it_twice()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var bench = new Workbench();
        string link = bench.At("port");
        using (var logger = SimulatedLogger.Start("--store", bench.At("card"), "--link", link))
        {
            LoggerBoxCommand.Run("fetch", "--port", link, "--archive", bench.Archive).Expect(0);
            logger.Kill();
        }

        using var restarted = SimulatedLogger.Start("--store", bench.At("card"), "--link", link);
        LoggerBoxCommand.Run("fetch", "--port", link, "--archive", bench.Archive).Expect(0);
        Assert.Single(Listed(bench.Archive));
        Assert.Equal(0, restarted.Stop());
        Assert.DoesNotContain("port", bench.Files());
    }

    private static JsonElement[] Listed(string archive) =>
        [.. JsonDocument.Parse(LoggerBoxCommand.Run("sessions", "--archive", archive, "--json").Expect(0).Out).RootElement.EnumerateArray()];

    private static byte[] Bytes(string archive)
    {
        using ArchiveFile file = ArchiveFile.OpenExisting(archive);
        return file.Sessions.Load("S1").Bytes;
    }
}
