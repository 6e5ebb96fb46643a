using System;
using System.Collections.Generic;
using System.IO;
using System.Reflection;

namespace LoggerBox.Benchmarks.Cost;

/// <summary>One trace of the self-test through the counted assemblies: what each step cost.</summary>
internal sealed class CountedRun
{
    private const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance;
    private const string Traces = "LoggerBox.SelfTest.Traces.";
    private const int StoreBytes = 512 * 1024;
    private const int MostToBeHad = 6000;

    private static readonly CountedAssemblies Assemblies = new(PathOf, "LoggerBox.Protocol", "LoggerBox.Capture");
    private static readonly Assembly SelfTest = Assemblies.Load("LoggerBox.SelfTest");

    private long most;

    /// <param name="trace">A table of TruckTrace.</param>
    /// <param name="intervalMicroseconds">Between sample sets, and between polls of the pickup.</param>
    public CountedRun(string trace, int intervalMicroseconds)
        : this(() => Recording(trace, intervalMicroseconds))
    {
    }

    private CountedRun(Func<object> begin)
    {
        // Once before, so that what runs for the first time has run.
        Go(begin(), isMeasured: false);
        Go(begin(), isMeasured: true);
    }

    public static IReadOnlyList<string> Methods => Assemblies.Methods;

    /// <summary>Instructions of each step.</summary>
    public List<long> Costs { get; } = new(65536);

    /// <summary>Instructions of each method in all steps, and in the one that cost most.</summary>
    public long[] Totals { get; } = new long[Assemblies.Methods.Count];

    public long[] Worst { get; } = new long[Assemblies.Methods.Count];

    /// <summary>Steps that cost more than there is to be had, and the instructions of each method in them.</summary>
    public List<(int Step, long[] Methods)> Dear { get; } = [];

    public List<long[]> EachStep { get; } = new(20000);

    /// <summary>Bytes that were allocated in all steps but the first, which begins the session.</summary>
    public long Allocated { get; private set; }

    public static CountedRun Streaming() => new(() => Activator.CreateInstance(Type("StreamedRun"), nonPublic: true)!);

    private static object Recording(string trace, int intervalMicroseconds)
    {
        object table = Type("TruckTrace").GetField(trace, All)!.GetValue(null)!;
        object truck = Activator.CreateInstance(Type("PartedTruck"), table)!;
        truck.GetType().GetProperty("PollMicroseconds")!.SetValue(truck, intervalMicroseconds);
        object plan = Type("TruckPlan").GetMethod("Whole", All)!.Invoke(null, null)!;
        return Activator.CreateInstance(Type("RecordedRun"), truck, plan, (uint)intervalMicroseconds, Activator.CreateInstance(Type("CutStore"), StoreBytes)!)!;
    }

    private void Go(object run, bool isMeasured)
    {
        Func<bool> step = run.GetType().GetMethod("Step")!.CreateDelegate<Func<bool>>(run);
        Action? wait = run.GetType().GetMethod("Wait")?.CreateDelegate<Action>(run);
        bool goesOn = true;
        while (goesOn)
        {
            // A board goes on polling while no set is taken: those polls are no step's.
            wait?.Invoke();
            Assemblies.Clear();
            long before = GC.GetAllocatedBytesForCurrentThread();
            goesOn = step();
            long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
            if (isMeasured)
            {
                Allocated += Costs.Count == 0 ? 0 : allocated;
                Keep(Assemblies.Sum());
            }
        }
    }

    private void Keep(long cost)
    {
        bool isWorst = Costs.Count > 0 && cost >= most;
        most = isWorst ? cost : most;
        Costs.Add(cost);
        Assemblies.Take(Totals);
        long[] each = new long[Assemblies.Methods.Count];
        Assemblies.Take(each);
        EachStep.Add(each);
        if (cost > MostToBeHad && Costs.Count > 1)
        {
            Dear.Add((Costs.Count - 1, new long[Assemblies.Methods.Count]));
            Assemblies.Take(Dear[^1].Methods);
        }

        if (isWorst)
        {
            Array.Clear(Worst);
            Assemblies.Take(Worst);
        }
    }

    private static Type Type(string name) => SelfTest.GetType(Traces + name)!;

    // Beside this program's own folder of the same configuration.
    private static string PathOf(string name)
    {
        DirectoryInfo folder = new(AppContext.BaseDirectory);
        string root = folder.FullName[..folder.FullName.IndexOf(Path.Combine("tests", "Benchmarks"), StringComparison.Ordinal)];
        string path = Path.Combine(root, "firmware", "self-test", "bin", folder.Parent!.Name, "netnano1.0", name);
        return File.Exists(path + ".dll") ? path + ".dll" : path + ".exe";
    }
}
