using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using System.Threading.Tasks;
using LoggerBox.Host.Archive;
using Xunit;
using Xunit.Abstractions;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>
/// A real logger process and a real fetch on a real pseudo-terminal, of which one is killed again and again in the middle of a session.
/// Linux counts the bytes that a process has written: by that the moment of the kill is chosen.
/// </summary>
public sealed class KilledProcessTests : IClassFixture<KilledProcessTests.UndisturbedRun>, IDisposable
{
    private const int Kills = 20;

    // A session may end just when the kill comes: few of the kills may miss.
    private const int FewestInMidSession = 15;

    // fetch stores what came in parts that fill four pages of the archive: a killed one loses less than that, and every run must bring one part at least.
    private const int BytesOfAPart = 16_841;

    private const int Seed = 20_260_302;

    private readonly Workbench bench = new();
    private readonly UndisturbedRun run;
    private readonly ITestOutputHelper notes;
    private readonly Random random = new(Seed);

    public KilledProcessTests(UndisturbedRun run, ITestOutputHelper notes)
    {
        this.run = run;
        this.notes = notes;
        Directory.CreateDirectory(bench.At("card"));
        File.Copy(run.Card, bench.At("card/sessions.log"));
    }

    private string Link => bench.At("port");

    public void Dispose() => bench.Dispose();

    [LinuxFact]
    public async Task A_logger_that_is_killed_twenty_times_during_one_fetch_is_fetched_completely_and_once()
    {
        SimulatedLogger logger = Start("--baud", "230400");
        using Process fetch = LoggerBoxCommand.Start("fetch", "--port", Link, "--archive", bench.Archive);
        Task<string> output = fetch.StandardOutput.ReadToEndAsync();
        Task<string> error = fetch.StandardError.ReadToEndAsync();
        bool sends = true;
        for (int kill = 1; kill <= Kills && sends; kill++)
        {
            sends = logger.TryWaitForBytes(random.Next(4000, 8000));

            // The system gives a dead logger's terminal number to whoever asks next, another test's logger too: the link goes first.
            File.Delete(Link);
            logger.Dispose();
            logger = Start(kill < Kills ? ["--baud", "230400"] : []);
        }

        bool ended = sends && fetch.WaitForExit(TimeSpan.FromSeconds(60));
        logger.Dispose();
        if (!ended)
        {
            fetch.Kill();
            Assert.Fail("fetch did not go on: " + await error);
        }

        string said = await error;
        Assert.True(fetch.ExitCode == 0, said);
        int inMidSession = Regex.Matches(said, @"cut in session \d+, of which (\d+) of (\d+) bytes are here")
            .Count(cut => long.Parse(cut.Groups[1].Value) < long.Parse(cut.Groups[2].Value));
        AssertHit(inMidSession);
        Assert.Equal(run.Sessions.Count, (await output).Split('\n').Count(line => line.Contains("fetched and confirmed", StringComparison.Ordinal)));
        AssertComplete();
    }

    [LinuxFact]
    public void A_fetch_that_is_killed_twenty_times_and_started_again_brings_everything_once()
    {
        using SimulatedLogger logger = Start("--baud", "460800");
        int inMidSession = 0;
        int partsKept = 0;
        for (int kill = 1; kill <= Kills; kill++)
        {
            using Process fetch = LoggerBoxCommand.Start("fetch", "--port", Link, "--archive", bench.Archive);
            Assert.True(logger.TryWaitForBytes(BytesOfAPart + random.Next(4000, 9000)), $"kill {kill}: the logger sends nothing");
            fetch.Kill();
            fetch.WaitForExit();
            IReadOnlyList<ArchivedSession> rows = RecordedCard.Rows(bench.Archive);
            inMidSession += rows.Any(row => !row.Complete) ? 1 : 0;
            partsKept += rows.Any(row => !row.Complete && row.Received > 0) ? 1 : 0;
        }

        LoggerBoxCommand.Run("fetch", "--port", Link, "--archive", bench.Archive).Expect(0);
        AssertHit(inMidSession);
        Assert.InRange(partsKept, Kills / 2, Kills);
        AssertComplete();
    }

    [LinuxFact]
    public async Task A_logger_that_does_not_come_back_is_told_as_the_cut_that_it_was()
    {
        using SimulatedLogger logger = Start("--baud", "230400");
        using Process fetch = LoggerBoxCommand.Start("fetch", "--port", Link, "--archive", bench.Archive);
        Task<string> error = fetch.StandardError.ReadToEndAsync();
        Assert.True(logger.TryWaitForBytes(8000), "the logger sends nothing");
        File.Delete(Link);
        logger.Kill();
        fetch.WaitForExit();
        string last = (await error).TrimEnd('\n').Split('\n')[^1];
        Assert.Equal(1, fetch.ExitCode);
        Assert.Contains($"The line on {Link} was cut: check plug and cable", last, StringComparison.Ordinal);
        Assert.DoesNotContain("There is no port", last, StringComparison.Ordinal);
    }

    /// <summary>Kills that never hit a session on its way would prove nothing.</summary>
    private void AssertHit(int inMidSession)
    {
        notes.WriteLine($"seed {Seed}: {inMidSession} of {Kills} kills in the middle of a session");
        Assert.InRange(inMidSession, FewestInMidSession, Kills);
    }

    private void AssertComplete()
    {
        Assert.All(RecordedCard.Rows(bench.Archive), row => Assert.True(row.Complete));
        Assert.Equal(run.Sessions, RecordedCard.Sessions(bench.Archive));
    }

    private SimulatedLogger Start(params string[] more) => SimulatedLogger.Start(["--store", bench.At("card"), "--link", Link, .. more]);

    /// <summary>A card of several sessions, and what an undisturbed fetch brings of it; made once.</summary>
    public sealed class UndisturbedRun : IDisposable
    {
        private readonly Workbench bench = new();

        public UndisturbedRun()
        {
            // Five sessions are more than twenty runs of a little over one part bring.
            RecordedCard.Make(bench.At("card"), 1, 2, 3, 4, 5);
            File.Copy(Path.Combine(bench.At("card"), "sessions.log"), Card);
            Sessions = RecordedCard.Cable(bench.At("card"), bench.Archive);
        }

        public string Card => bench.At("unconfirmed.log");

        public IReadOnlyList<byte[]> Sessions { get; }

        public void Dispose() => bench.Dispose();
    }
}

/// <summary>A test that asks Linux what a process has done.</summary>
public sealed class LinuxFactAttribute : FactAttribute
{
    public LinuxFactAttribute() => Skip = OperatingSystem.IsLinux() ? null : "Linux only: the kill is timed by /proc.";
}
