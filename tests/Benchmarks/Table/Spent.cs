using System;
using System.Diagnostics;
using System.Linq;

namespace LoggerBox.Benchmarks.Table;

/// <summary>What some work took, in seconds: by the clock, and of all processors together.</summary>
internal readonly record struct Spent(double Clock, double Processor)
{
    public static Spent On(Action work)
    {
        using Process process = Process.GetCurrentProcess();
        TimeSpan before = process.TotalProcessorTime;
        Stopwatch watch = Stopwatch.StartNew();
        work();
        TimeSpan clock = watch.Elapsed;
        process.Refresh();
        return new Spent(clock.TotalSeconds, (process.TotalProcessorTime - before).TotalSeconds);
    }

    /// <summary>The middle one of several, each figure for itself.</summary>
    public static Spent Median(int times, Action work)
    {
        Spent[] all = [.. Enumerable.Range(0, times).Select(_ => On(work))];
        return new Spent(all.Select(one => one.Clock).Order().ElementAt(times / 2), all.Select(one => one.Processor).Order().ElementAt(times / 2));
    }

    public override string ToString() => FormattableString.Invariant($"{Clock:0.000} s ({Processor:0.000} s of processors)");
}
