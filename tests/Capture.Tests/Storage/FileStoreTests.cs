using System;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using LoggerBox.Capture.Storage;
using LoggerBox.PowerLoss;
using LoggerBox.Protocol.Records;
using LoggerBox.TruckSimulator.Storage;
using Xunit;
using Xunit.Abstractions;

namespace LoggerBox.Capture.Tests.Storage;

public sealed class FileStoreTests(ITestOutputHelper output) : IDisposable
{
    private const int Seed = 11;

    private readonly string path = Path.Combine(Path.GetTempPath(), "loggerbox-" + Guid.NewGuid().ToString("N"));

    public void Dispose() => File.Delete(path);

    [Fact]
    public void A_recording_process_killed_at_any_moment_loses_nothing_that_it_had_answered_for()
    {
        output.WriteLine($"seed {Seed}");
        Random random = new(Seed);
        for (int kill = 0; kill < 10; kill++)
        {
            (uint session, int blocks) = RecordAndKill(random.Next(1, 60));
            using FileStore store = new(path, KilledChild.CardBytes);
            RecordLog log = LogExamples.Opened(store);
            LoggedSession found = log.Sessions.Find(session)!;
            int kept = LogExamples.Records(log, found).OfType<SampleBlock>().Count();
            Assert.InRange(kept, blocks, blocks + 1);
            Assert.False(found.Ended);
            Assert.Equal(kill + 1, log.Sessions.Count);
        }
    }

    [Fact]
    public void A_file_cut_short_inside_a_page_loses_that_page_only()
    {
        using (FileStore store = new(path, 1_000_000))
        {
            LogExamples.Record(LogExamples.Opened(store), events: 60);
        }

        byte[] whole = File.ReadAllBytes(path);
        File.WriteAllBytes(path, whole[..^3]);
        using FileStore cut = new(path, 1_000_000);
        RecordLog log = LogExamples.Opened(cut);
        LogExamples.Record(log, events: 3);
        Assert.Equal(2, log.Sessions.Count);
        Assert.Equal(5, LogExamples.Records(log, log.Sessions[1]).Count);
    }

    /// <summary>What the child had said when it was killed: its session and the blocks that were safe.</summary>
    private (uint Session, int Blocks) RecordAndKill(int afterLines)
    {
        ProcessStartInfo start = new("dotnet", [typeof(KilledChild).Assembly.Location, KilledChild.Verb, path]) { RedirectStandardOutput = true };
        using Process child = Process.Start(start)!;
        string? line = null;
        for (int i = 0; i < afterLines; i++)
        {
            line = child.StandardOutput.ReadLine() ?? line;
        }

        child.Kill();
        while (child.StandardOutput.ReadLine() is string said)
        {
            line = said.Contains(' ', StringComparison.Ordinal) ? said : line;
        }

        child.WaitForExit();
        string[] words = line!.Split(' ');
        return (uint.Parse(words[0], CultureInfo.InvariantCulture), int.Parse(words[1], CultureInfo.InvariantCulture));
    }
}
