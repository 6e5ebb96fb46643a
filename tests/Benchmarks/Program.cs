using System;
using System.Collections.Generic;
using LoggerBox.Benchmarks.Cost;
using LoggerBox.Benchmarks.Day;
using LoggerBox.Benchmarks.Holds;
using LoggerBox.Benchmarks.Line;
using LoggerBox.Benchmarks.Samples;
using LoggerBox.Benchmarks.StartUp;
using LoggerBox.Benchmarks.Table;

namespace LoggerBox.Benchmarks;

internal static class Program
{
    private static readonly Dictionary<string, Func<string[], int>> Benches = new()
    {
        ["cost"] = CostTable.Run,
        ["day"] = DayFigures.Run,
        ["encoding"] = EncodingTable.Run,
        ["holds"] = HoldTable.Run,
        ["line"] = LineBench.Run,
        ["start"] = StartFigures.Run,
        ["table"] = WholeTable.Run,
    };

    private static int Main(string[] words)
    {
        if (words.Length > 0 && Benches.TryGetValue(words[0], out Func<string[], int>? bench))
        {
            return bench(words[1..]);
        }

        Console.Error.WriteLine($"Name a bench: {string.Join(", ", Benches.Keys)}.");
        return 2;
    }
}
