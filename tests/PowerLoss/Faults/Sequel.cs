using System.Collections.Generic;

namespace LoggerBox.PowerLoss.Faults;

/// <summary>What a logger does after a fault: it starts again, finds what is there, and records a short session behind it.</summary>
public sealed class Sequel
{
    private static readonly WrittenRecord Samples = new(Examples.Block(new System.Random(1), 0, 16));

    private readonly Bench bench;
    private readonly Recording recording;

    /// <summary>Begins with the card as it is on the bench.</summary>
    public Sequel(Bench bench, Ledger known, int start)
    {
        this.bench = bench;
        recording = new Recording(bench.Card, bench.Log, known);
        recording.Start(start);
        if (recording.Begin("sequel"))
        {
            recording.Append(Samples);
            recording.End(1);
        }
    }

    public IReadOnlyList<Step> Steps => recording.Steps;

    public Ledger Ledger => recording.Ledger;

    /// <summary>Takes its writes back off the card.</summary>
    public void Undo()
    {
        for (int i = Steps.Count - 1; i >= 0; i--)
        {
            Steps[i].Write.Old.CopyTo(bench.Card.Image, Steps[i].Write.Offset);
        }
    }
}
