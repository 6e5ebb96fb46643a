using System;
using System.Diagnostics;
using System.IO;
using LoggerBox.Benchmarks.Table;

namespace LoggerBox.Benchmarks.Day;

/// <summary>What one would do without this program: the samples as a CSV file, read and drawn by a script of pandas and matplotlib.</summary>
internal static class PandasPlot
{
    // Debian's own, for which the libraries are packaged.
    private const string Python = "/usr/bin/python3";

    private const string Script =
        """
        import sys, matplotlib
        matplotlib.use("Agg")
        import pandas, matplotlib.pyplot as plot
        table = pandas.read_csv(sys.argv[1])
        figure, axes = plot.subplots(4, 1, figsize=(16, 12))
        for axis, name in zip(axes, ["rpm", "main", "clutch", "converter"]):
            axis.plot(table["s"], table[name])
        figure.savefig(sys.argv[2])
        """;

    public static string Of(Folder folder, (long Microseconds, short[] Counts)[] sets)
    {
        string csv = folder.File("sets.csv");
        using (StreamWriter file = new(csv) { NewLine = "\n" })
        {
            file.WriteLine("s,rpm,main,clutch,converter");
            foreach ((long microseconds, short[] counts) in sets)
            {
                file.WriteLine(FormattableString.Invariant($"{microseconds / 1e6},{string.Join(',', counts)}"));
            }
        }

        string picture = folder.File("sets.png");
        Stopwatch watch = Stopwatch.StartNew();
        using Process? python = File.Exists(Python)
            ? Process.Start(new ProcessStartInfo(Python, ["-c", Script, csv, picture]) { RedirectStandardError = true })
            : null;
        python?.StandardError.ReadToEnd();
        python?.WaitForExit();
        return python?.ExitCode == 0 && File.Exists(picture)
            ? FormattableString.Invariant($"pandas and matplotlib, reading CSV and drawing four curves: {watch.Elapsed.TotalSeconds:0.0} s")
            : "pandas and matplotlib: not installed";
    }
}
