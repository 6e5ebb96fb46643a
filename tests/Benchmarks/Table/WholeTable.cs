using System.Collections.Generic;
using System.Linq;
using LoggerBox.Benchmarks.Cost;
using LoggerBox.Benchmarks.Day;
using LoggerBox.Benchmarks.Line;
using LoggerBox.Benchmarks.Samples;
using LoggerBox.Benchmarks.StartUp;

namespace LoggerBox.Benchmarks.Table;

/// <summary>Everything that has a figure to reach, in one table, each beside what it is compared with.</summary>
internal static class WholeTable
{
    public static int Run(string[] words)
    {
        using Folder folder = new();
        return Figure.Print(All(folder));
    }

    private static IEnumerable<Figure> All(Folder folder) => StartFigures.Of(folder)
        .Concat(LineBench.Figures())
        .Concat(DayFigures.Of(folder))
        .Concat(EncodingTable.Figures())
        .Concat(CrashFigures.Of())
        .Concat(CostTable.Figures());
}
