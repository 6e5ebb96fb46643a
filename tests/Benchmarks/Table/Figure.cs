using System;
using System.Collections.Generic;
using System.IO;

namespace LoggerBox.Benchmarks.Table;

/// <summary>A row of the table.</summary>
/// <param name="Must">What is to be had; empty for what is only compared with.</param>
/// <param name="Beside">What it is compared with, measured in the same run.</param>
internal sealed record Figure(string What, string Value, string Must = "", string Beside = "")
{
    /// <summary>Prints each as soon as it is measured, and how busy the machine was before and after.</summary>
    public static int Print(IEnumerable<Figure> figures)
    {
        Console.WriteLine($"Load {Load()} on {Environment.ProcessorCount} processors. Times of this program are those of compiled code that has run before, in the middle of several.");
        Console.WriteLine();
        Console.WriteLine("| what | figure | to be had | beside it |");
        Console.WriteLine("| --- | ---: | --- | --- |");
        foreach (Figure figure in figures)
        {
            Console.WriteLine($"| {figure.What} | {figure.Value} | {figure.Must} | {figure.Beside} |");
        }

        Console.WriteLine();
        Console.WriteLine($"Load {Load()} at the end.");
        return 0;
    }

    private static string Load() => File.Exists("/proc/loadavg") ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "unknown";
}
