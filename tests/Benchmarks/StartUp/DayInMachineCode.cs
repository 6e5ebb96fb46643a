using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Benchmarks.Day;
using LoggerBox.Benchmarks.Table;
using LoggerBox.Host.Archive;
using LoggerBox.TruckSimulator.Demo;

namespace LoggerBox.Benchmarks.StartUp;

/// <summary>Eight hours at 100 a second through the program itself: its start, its time and its memory, for a whole job file and a judgement.</summary>
internal static class DayInMachineCode
{
    private const int Runs = 7;

    public static IEnumerable<Figure> Of(NativeProgram program, Folder folder)
    {
        string archive = folder.File("day.sqlite");
        string sheet = folder.File(SampleSheet.FileName);
        string job = folder.File("day.lbjob");
        File.WriteAllText(sheet, SampleSheet.Text());
        using (ArchiveFile file = ArchiveFile.Open(archive))
        {
            file.Sessions.Add(DayRecording.Of(2, new TestRecords(TestRecording.Bytes("forward-clutch-leak", 1))).Bytes, SessionOrigin.Fetched, "bench", DateTimeOffset.UtcNow);
        }

        program.Run("job", "new", "--truck", "Sample truck", "--archive", archive);
        program.Run("job", "add", "J1", "S1", "--archive", archive);
        program.Run("export", "J1", "--out", job, "--archive", archive);
        int imported = 0;
        yield return Row("import of eight hours from a job file", "less than 80 MB", () => program.Run("import", job, "--archive", folder.File($"imported-{imported++}.sqlite")));
        yield return Row("judge eight hours", "at most 100 ms; less than 80 MB", () => program.Run("judge", "S1", "--sheet", sheet, "--archive", archive));
        yield return Row("verify eight hours, `archive check`", "at most 400 ms", () => program.Run("archive", "check", "--archive", archive));
        yield return Row("report of eight hours", "at most 1 s; less than 80 MB", () => program.Run("report", "S1", "--sheet", sheet, "--archive", archive, "--out", folder.File("day.html")));
    }

    private static Figure Row(string what, string must, Func<ProgramRun> run)
    {
        ProgramRun[] runs = [.. Enumerable.Range(0, Runs).Select(_ => run()).OrderBy(one => one.Seconds)];
        return Array.TrueForAll(runs, one => one.Status == 0)
            ? new Figure(
                "machine code: " + what,
                FormattableString.Invariant($"{runs[0].Seconds * 1000:0} ms at least, {runs[Runs / 2].Seconds * 1000:0} in the middle of {Runs}; {runs.Max(one => one.PeakKilobytes) / 1000.0:0} MB at most"),
                must)
            : throw new InvalidOperationException($"{what}: {runs[0].Errors}");
    }
}
