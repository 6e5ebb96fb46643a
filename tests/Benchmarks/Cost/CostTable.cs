using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;

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
            PrintDear("whole test", whole);
            PrintDear("faulty run", faulty);
        }

        return 0;
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
