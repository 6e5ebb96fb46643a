using System;
using System.Collections.Generic;
using System.ComponentModel;
using System.Linq;
using LoggerBox.Benchmarks.Table;

namespace LoggerBox.Benchmarks.StartUp;

/// <summary>The program in machine code: how long it takes to begin, how big it is, and how much memory eight hours take it.</summary>
internal static class StartFigures
{
    private const int Runs = 60;

    public static int Run(string[] words)
    {
        using Folder folder = new();
        return Figure.Print(Of(folder).Concat(NativeProgram.Find() is { } program ? VerbStarts.Of(program, folder).Select(AsFigure) : []));
    }

    public static IEnumerable<Figure> Of(Folder folder) => NativeProgram.Find() is { } program
        ? Sessions(program, folder).Append(Slowest(program, folder)).Concat(DayInMachineCode.Of(program, folder))
        : [new Figure("program in machine code", "not made", "", "packaging/make linux-x64")];

    private static IEnumerable<Figure> Sessions(NativeProgram program, Folder folder)
    {
        string archive = folder.File("fifty.sqlite");
        FiftySessions.Write(archive);
        ProgramRun[] runs = [.. Enumerable.Range(0, Runs).Select(_ => program.Run("sessions", "--archive", archive))];
        yield return new Figure("machine code: `sessions` of fifty, start to end", Times(runs), "at most 15 ms", Sqlite(archive));
        yield return new Figure("machine code: unpacked", FormattableString.Invariant($"{program.FolderBytes / 1e6:0.0} MB"), "at most 40 MB");
    }

    private static string Sqlite(string archive)
    {
        try
        {
            return "sqlite3, the same rows: " + Times([.. Enumerable.Range(0, Runs).Select(_ => ProgramRun.Of(
                "sqlite3", archive, "SELECT *, (SELECT sum(length(bytes)) FROM parts WHERE session = sessions.id) FROM sessions"))]);
        }
        catch (Win32Exception)
        {
            return "sqlite3: not installed";
        }
    }

    private static Figure Slowest(NativeProgram program, Folder folder)
    {
        VerbStart[] slowest = [.. VerbStarts.Of(program, folder).OrderByDescending(start => start.Seconds).Take(3)];
        return new Figure("machine code: slowest verbs to the first byte", string.Join(", ", slowest.Select(Told)), "at most 50 ms", "`start` has all");
    }

    private static Figure AsFigure(VerbStart start) => new($"first byte of `{start.Verb}`", FormattableString.Invariant($"{start.Seconds * 1000:0.0} ms"), "at most 50 ms");

    private static string Told(VerbStart start) => FormattableString.Invariant($"{start.Verb} {start.Seconds * 1000:0} ms");

    private static string Times(ProgramRun[] runs)
    {
        double[] all = [.. runs.Select(run => run.Seconds * 1000).Order()];
        return FormattableString.Invariant($"{all[0]:0.0} ms at least, {all[all.Length / 2]:0.0} in the middle of {all.Length}");
    }
}
