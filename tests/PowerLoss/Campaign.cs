using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using LoggerBox.PowerLoss.Faults;

namespace LoggerBox.PowerLoss;

/// <summary>Puts every fault into every step of a recording, on as many threads as asked for.</summary>
public sealed class Campaign(Recording recording, int seed, IReadOnlyList<IFault> faults)
{
    private readonly Dictionary<string, long> statesByFault = [];
    private readonly List<string> violations = [];
    private int next;

    public IReadOnlyDictionary<string, long> StatesByFault => statesByFault;

    public IReadOnlyList<string> Violations => violations;

    /// <summary>All ten ways in which cards go wrong, and cuts of what follows a cut.</summary>
    public static IReadOnlyList<IFault> Faults(int draws, int placeStride, RepeatedCuts repeated) =>
    [
        new CleanCut(),
        new TornUnit(draws),
        new MixedUnits(draws * 4),
        new NeighbourGarbage(),
        new PagesOutOfOrder(),
        new ProgramNoOp(),
        new EraseNoOp(),
        new MetastableUnit(draws),
        new BitRot(),
        new MisdirectedWrite(placeStride),
        repeated,
    ];

    public void Run(int threads)
    {
        byte[][] images = Images();
        Thread[] workers = Enumerable.Range(0, threads).Select(_ => new Thread(() => Work(images))).ToArray();
        foreach (Thread worker in workers)
        {
            worker.Start();
        }

        foreach (Thread worker in workers)
        {
            worker.Join();
        }
    }

    private void Work(byte[][] images)
    {
        Bench bench = new(recording.Card.Image.Length / Card.Page, seed);
        int steps = recording.Steps.Count;
        for (int job = Interlocked.Increment(ref next) - 1; job < steps * faults.Count; job = Interlocked.Increment(ref next) - 1)
        {
            IFault fault = faults[job / steps];
            int step = job % steps;
            long before = bench.States;
            bench.Load(images[step], fault.Name, step);
            Try(bench, fault, step);
            lock (statesByFault)
            {
                statesByFault[fault.Name] = statesByFault.GetValueOrDefault(fault.Name) + bench.States - before;
            }

            if (bench.Violations.Count > 0)
            {
                break;
            }
        }

        lock (violations)
        {
            violations.AddRange(bench.Violations);
        }
    }

    private void Try(Bench bench, IFault fault, int step)
    {
        try
        {
            fault.Try(bench, recording.Steps, step);
        }
        catch (Exception error)
        {
            bench.Violations.Add($"seed {seed}: {fault.Name}, step {step}: {error.Message}");
        }
    }

    // The card as it was before each step.
    private byte[][] Images()
    {
        byte[] image = [.. recording.Card.Image];
        byte[][] images = new byte[recording.Steps.Count][];
        for (int i = images.Length - 1; i >= 0; i--)
        {
            CardWrite write = recording.Steps[i].Write;
            write.Old.CopyTo(image, write.Offset);
            images[i] = [.. image];
        }

        return images;
    }
}
