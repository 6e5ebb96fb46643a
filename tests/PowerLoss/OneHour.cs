using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using LoggerBox.PowerLoss.Faults;

namespace LoggerBox.PowerLoss;

/// <summary>Random states of one long session: a fault of a random kind at a random place of each write in turn.</summary>
public sealed class OneHour(Recording recording, int seed, int states)
{
    private readonly List<string> violations = [];
    private long done;

    public IReadOnlyList<string> Violations => violations;

    public long States => done;

    public void Run(int threads)
    {
        Thread[] workers = Enumerable.Range(0, threads).Select(worker => new Thread(() => Work(worker, threads))).ToArray();
        foreach (Thread worker in workers)
        {
            worker.Start();
        }

        foreach (Thread worker in workers)
        {
            worker.Join();
        }
    }

    // Every worker writes the whole log onto a card of its own and stops at every one of its steps.
    private void Work(int worker, int workers)
    {
        IReadOnlyList<Step> steps = recording.Steps;
        Bench bench = new(recording.Card.Image.Length / Card.Page, seed);
        for (int i = 0; i < steps.Count && !bench.IsDone; i++)
        {
            long wanted = (states * (i + 1L) / steps.Count) - ((long)states * i / steps.Count);
            if (i % workers == worker)
            {
                bench.Load(bench.Card.Image, "one hour", i);
                for (long n = 0; n < wanted; n++)
                {
                    RandomFault.Try(bench, steps, i);
                }
            }

            steps[i].Write.New.CopyTo(bench.Card.Image, steps[i].Write.Offset);
        }

        lock (violations)
        {
            violations.AddRange(bench.Violations);
            done += bench.States;
        }
    }
}
