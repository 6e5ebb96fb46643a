using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Benchmarks.Table;

namespace LoggerBox.Benchmarks.Cost;

/// <summary>
/// Executed instructions and allocated bytes of the logger's assemblies, step by step: speed, sample storing, holds, guards and all else
/// under the engine's Step, one poll of the pickup a step; then the sending of a session.
/// </summary>
internal static class CostTable
{
    private const int DearestSteps = 25;
    private const int MethodsOfAStep = 12;

    public static int Run(string[] words)
    {
        CountedRun whole = new("WholeTest", 20_000);
        CountedRun faulty = new("FaultyRun", 10_000);
        CountedRun sending = CountedRun.Streaming();
        Console.WriteLine("| trace | steps | mean | worst | bytes allocated |");
        Console.WriteLine("| --- | ---: | ---: | ---: | ---: |");
        foreach ((string name, CountedRun run) in new[] { ("whole test, 50 sets a second", whole), ("faulty run, 100 sets a second", faulty), ("sending, frames of 1 KB, a step each", sending) })
        {
            Console.WriteLine($"| {name} | {run.Costs.Count:N0} | {run.Costs.Average():N0} | {run.Costs.Max():N0} | {run.Allocated} |");
        }

        Console.WriteLine();
        PrintShares(whole);
        if (words.Contains("--methods"))
        {
            PrintMethods(whole);
            PrintKinds("whole test", whole);
            PrintKinds("faulty run", faulty);
            PrintDear("whole test", whole);
            PrintDear("faulty run", faulty);
        }

        return 0;
    }

    public static IEnumerable<Figure> Figures()
    {
        CountedRun whole = new("WholeTest", 20_000);
        yield return new Figure(
            "instructions of the logger a step, whole test at 50 sets a second",
            $"mean {whole.Costs.Average():N0}, worst {whole.Costs.Max():N0}; {whole.Allocated} bytes allocated",
            "mean 3,000, worst 6,000; 0 bytes");
    }

    private static void PrintShares(CountedRun run)
    {
        Console.WriteLine("| part | mean a step | in the worst step |");
        Console.WriteLine("| --- | ---: | ---: |");
        foreach (IGrouping<string, int> part in Enumerable.Range(0, CountedRun.Methods.Count).GroupBy(i => Part(CountedRun.Methods[i])).OrderByDescending(part => part.Sum(i => run.Totals[i])))
        {
            double mean = part.Sum(i => run.Totals[i]) / (double)run.Costs.Count;
            long worst = part.Sum(i => run.Worst[i]);
            if (mean >= 0.5 || worst > 0)
            {
                Console.WriteLine($"| {part.Key} | {mean:N0} | {worst:N0} |");
            }
        }
    }

    private static void PrintMethods(CountedRun run)
    {
        Console.WriteLine();
        foreach (int i in Enumerable.Range(0, CountedRun.Methods.Count).OrderByDescending(i => run.Totals[i]).Take(160))
        {
            Console.WriteLine($"{run.Totals[i] / (double)run.Costs.Count,8:F1} {run.Worst[i],8} {Short(CountedRun.Methods[i])}");
        }

    }

    private static void PrintKinds(string name, CountedRun run)
    {
        string[] marks = ["HoldFinder.Take", "HoldFinder.Look", "BinAverager.BeginAnother", "PulseSpeed.TakeEdge", "ColumnTrial.Take", "ColumnCode.WriteUsual", "RecordWriter.Advance", "RecordWriter.Write", "BlockWriter.TryWrite", "HoldFinder.Advance", "EndedHolds.Store", "StepNamer.Advance", "OpenStep.Recognise", "RunUpTimer.Advance", "RunUpTimer.Begin", "EngagementShape.Begin", "EngagementShape.Advance", "SessionHolds.Add"];
        string[] tags = ["take", "look", "com", "edge", "trial", "enc", "blk", "rec", "write", "hold", "store", "name", "open", "runup", "runup0", "eng0", "eng", "add"];
        int[] at = [.. marks.Select(mark => Enumerable.Range(0, CountedRun.Methods.Count).First(i => Short(CountedRun.Methods[i]) == mark))];
        Console.WriteLine($"{name} kinds");
        foreach (var kind in run.EachStep.Skip(1).GroupBy(each => string.Join('+', Enumerable.Range(0, at.Length).Where(k => each[at[k]] > 0).Select(k => tags[k]))).OrderByDescending(kind => kind.Max(each => each.Sum())))
        {
            Console.WriteLine($"{kind.Count(),6} mean {kind.Average(each => each.Sum()),8:F0} max {kind.Max(each => each.Sum()),7} over {kind.Count(each => each.Sum() > 6000),5} {kind.Key}");
        }
    }

    private static void PrintDear(string name, CountedRun run)
    {
        Console.WriteLine();
        Console.WriteLine($"{name}: {run.Dear.Count} steps above what is to be had; the dearest, and their dearest methods:");
        foreach ((int step, long[] methods) in run.Dear.OrderByDescending(dear => dear.Methods.Sum()).Take(DearestSteps))
        {
            IEnumerable<string> shares = Enumerable.Range(0, methods.Length).OrderByDescending(i => methods[i]).Take(MethodsOfAStep).Select(i => $"{Short(CountedRun.Methods[i])} {methods[i]:N0}");
            Console.WriteLine($"step {step}: {methods.Sum():N0} = {string.Join(", ", shares)}");
        }
    }

    // "System.Int32 LoggerBox.Capture.Speed.PulseSpeed::ReadTenths(System.Int64)" -> "PulseSpeed.ReadTenths"
    private static string Short(string method) => method.Split(' ').First(word => word.Contains("::", StringComparison.Ordinal)).Split('(')[0].Split('.')[^1].Replace("::", ".", StringComparison.Ordinal);

    // "System.Int32 LoggerBox.Capture.Speed.PulseSpeed::ReadTenths(System.Int64)" -> "Capture.Speed"
    private static string Part(string method)
    {
        string type = method.Split(' ').First(word => word.Contains("::", StringComparison.Ordinal)).Split("::")[0];
        string[] names = type.Split('.');
        return names.Length > 3 ? names[1] + "." + names[2] : string.Join('.', names.Skip(1));
    }
}
