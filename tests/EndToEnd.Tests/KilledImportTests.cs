using System;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Tests.Archive.Places;
using Xunit;
using Xunit.Abstractions;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>
/// Real imports, killed by the system (SIGKILL) at moments spread over the time that one takes: the session is wholly there or not at all, and
/// importing again is harmless. Twenty kills in each test run; LOGGERBOX_KILLS names another number.
/// </summary>
public sealed class KilledImportTests : IDisposable
{
    private const int Seed = 20_261_128;

    private static readonly int Kills = int.Parse(Environment.GetEnvironmentVariable("LOGGERBOX_KILLS") ?? "20", CultureInfo.InvariantCulture);

    private readonly Workbench bench = new();
    private readonly ITestOutputHelper notes;

    public KilledImportTests(ITestOutputHelper notes) => this.notes = notes;

    public void Dispose() => bench.Dispose();

    [LinuxFact]
    public void An_import_killed_at_any_moment_is_whole_or_absent_and_can_be_repeated() => KillAndRepeat(number => bench.At($"{number}.sqlite"));

    [PostgresFact]
    public void One_into_a_server_is_too() => KillAndRepeat(_ => PostgresServer.Shared.Address(PostgresServer.Shared.NewDatabase()));

    private void KillAndRepeat(Func<int, string> newArchive)
    {
        string file = Made();
        byte[] session = RecordedCard.Sessions(bench.At("made.sqlite")).Single();
        TimeSpan whole = Undisturbed(file, newArchive);
        Random random = new(Seed);
        int killed = 0;
        int there = 0;
        for (int kill = 0; kill < Kills; kill++)
        {
            string archive = newArchive(kill);
            using Process import = LoggerBoxCommand.Start("import", file, "--archive", archive);
            Thread.Sleep(whole * random.NextDouble());
            import.Kill();
            import.WaitForExit();
            killed += import.ExitCode == 128 + 9 ? 1 : 0;
            there += IsThere(archive, session) ? 1 : 0;
            LoggerBoxCommand.Run("import", file, "--archive", archive).Expect(0);
            Assert.Equal(session, RecordedCard.Sessions(archive).Single());
        }

        notes.WriteLine($"seed {Seed}: {killed} of {Kills} killed before they ended, {there} of them with the session there");
        Assert.InRange(killed, Kills / 2, Kills);
    }

    private string Made()
    {
        LoggerBoxCommand.Run("import", Recordings.Trace("healthy"), "--archive", bench.At("made.sqlite")).Expect(0);
        LoggerBoxCommand.Run("job", "new", "--truck", "Sample truck", "--archive", bench.At("made.sqlite")).Expect(0);
        LoggerBoxCommand.Run("job", "add", "J1", "S1", "--archive", bench.At("made.sqlite")).Expect(0);
        LoggerBoxCommand.Run("export", "J1", "--out", bench.At("job.lbjob"), "--archive", bench.At("made.sqlite")).Expect(0);
        return bench.At("job.lbjob");
    }

    // The shortest of some: the first has the files to read that the later ones find in memory.
    private static TimeSpan Undisturbed(string file, Func<int, string> newArchive)
    {
        TimeSpan shortest = TimeSpan.MaxValue;
        for (int run = 1; run <= 4; run++)
        {
            string archive = newArchive(-run);
            Stopwatch watch = Stopwatch.StartNew();
            LoggerBoxCommand.Run("import", file, "--archive", archive).Expect(0);
            shortest = watch.Elapsed < shortest ? watch.Elapsed : shortest;
        }

        return shortest;
    }

    // The archive opens, where there is one yet; what it holds is a whole session and its job, or neither.
    private static bool IsThere(string archive, byte[] session)
    {
        if (!PlaceWords.IsServer(archive) && (!File.Exists(archive) || new FileInfo(archive).Length == 0))
        {
            return false;
        }

        using ArchiveFile file = ArchiveFile.Open(archive);
        bool there = file.Sessions.All().Count == 1;
        Assert.Equal(there ? 1 : 0, file.Jobs.All().Count);
        Assert.True(!there || file.Sessions.Bytes("S1").AsSpan().SequenceEqual(session));
        return there;
    }
}
