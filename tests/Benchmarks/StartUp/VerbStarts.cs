using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using LoggerBox.Benchmarks.Table;

namespace LoggerBox.Benchmarks.StartUp;

/// <param name="Seconds">From the start of the program to its first byte on standard output, the middle one of some.</param>
internal sealed record VerbStart(string Verb, double Seconds);

/// <summary>Every verb of the README, on the archive of a demo, with a logger where it needs one.</summary>
internal static class VerbStarts
{
    private const int Runs = 5;

    public static IEnumerable<VerbStart> Of(NativeProgram program, Folder folder)
    {
        string demo = folder.File("demo-" + Guid.NewGuid().ToString("N"));
        yield return new VerbStart("demo", program.Run("demo", "--out", demo).FirstByte);
        string archive = Directory.EnumerateFiles(demo, "*.sqlite").Single();
        string sheet = Directory.EnumerateFiles(demo, "*.toml").Single();
        string Out(string ending) => Path.Combine(demo, "out" + ending);
        program.Run("export", "J1", "--archive", archive, "--out", Out(".lbjob"));
        foreach (string job in new[] { "J2", "J3" })
        {
            program.Run("job", "new", "--truck", "Sample truck", "--serial", "A1", "--sheet", sheet, "--archive", archive);
            program.Run("job", "add", job, "S1", "--archive", archive);
        }

        string[][] verbs =
        [
            ["sessions"], ["job", "show", "J1"], ["job", "new", "--truck", "Sample truck", "--serial", "A2"], ["job", "add", "J4", "S1"],
            ["job", "gate", "J4", "chocks", "--by", "A. Fitter"], ["job", "correct", "J4", "--hours", "1200", "--by", "A. Fitter"], ["job", "close", "J4", "--not-released"],
            ["judge", "J1"], ["compare", "S1", "S1", "--sheet", sheet], ["history", "A1"], ["look", "S1"],
            ["report", "J1", "--out", Out(".html")], ["report", "J1", "--out", Out(".pdf")],
            ["export", "S1", "--out", Out(".csv")], ["export", "S1", "--out", Out(".parquet")], ["import", Out(".lbjob")], ["sheet", "list"],
            ["archive", "check"], ["archive", "backup", Out(".copy")],
        ];
        foreach (string[] verb in verbs)
        {
            yield return Middle(program, Name(verb), () =>
            {
                File.Delete(Out(".copy"));
                return [.. verb, "--archive", archive];
            });
        }

        foreach (string[] verb in new string[][] { ["ports"], ["sheet", "check", sheet], ["sheet", "card", sheet], ["judge", Out(".csv"), "--sheet", sheet] })
        {
            yield return Middle(program, Name(verb), () => verb);
        }

        foreach (VerbStart start in WithLogger(program, archive, sheet))
        {
            yield return start;
        }
    }

    private static IEnumerable<VerbStart> WithLogger(NativeProgram program, string archive, string sheet)
    {
        (Process logger, string port, double seconds) = program.Begin("simulate", "--speed", "real", "--tcp");
        yield return new VerbStart("simulate", seconds);
        try
        {
            yield return Middle(program, "fetch", () => ["fetch", "--port", port, "--archive", archive]);
            yield return Middle(program, "calibrate --show", () => ["calibrate", "--show", "--port", port, "--archive", archive]);
            yield return Middle(program, "plan send", () => ["plan", "send", sheet, "--port", port]);
            foreach (string[] verb in new string[][] { ["watch", "--port", port], ["serve", "--archive", archive] })
            {
                yield return new VerbStart(verb[0], Enumerable.Range(0, Runs).Select(_ => Until(program, verb)).Order().ElementAt(Runs / 2));
            }
        }
        finally
        {
            End(logger);
        }
    }

    private static VerbStart Middle(NativeProgram program, string name, Func<string[]> words)
    {
        ProgramRun[] runs = [.. Enumerable.Range(0, Runs).Select(_ => program.Run(words())).OrderBy(run => run.FirstByte)];

        // What is done cannot always be done again: the first time must go through.
        return Array.Exists(runs, run => run.Status == 0)
            ? new VerbStart(name, runs[Runs / 2].FirstByte)
            : throw new InvalidOperationException($"{name}: {runs[0].Errors}");
    }

    private static double Until(NativeProgram program, string[] words)
    {
        (Process running, _, double seconds) = program.Begin(words);
        End(running);
        return seconds;
    }

    private static void End(Process running)
    {
        running.Kill();
        running.WaitForExit();
        running.Dispose();
    }

    private static string Name(string[] words) => string.Join(' ', words.Take(words[0] is "job" or "sheet" or "archive" ? 2 : 1))
        + (words.FirstOrDefault(word => word.StartsWith('/') && Path.GetExtension(word) is ".pdf" or ".html" or ".csv" or ".parquet") is { } file ? " " + Path.GetExtension(file) : "");
}
