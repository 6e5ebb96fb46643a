using System;
using System.Collections.Generic;
using LoggerBox.Capture.Storage;

namespace LoggerBox.PowerLoss;

/// <summary>One worker's card, log and oracle: puts a fault into the card, lets the real code recover, judges what it gives out.</summary>
public sealed class Bench
{
    private const int MostViolations = 5;

    private readonly Oracle oracle = new();
    private readonly int seed;

    public Bench(int pages, int seed)
    {
        this.seed = seed;
        Card = new Card(pages);
        Log = new RecordLog(Card);
    }

    public Card Card { get; }

    public RecordLog Log { get; }

    public Random Chance { get; private set; } = new(0);

    public long States { get; private set; }

    public List<string> Violations { get; } = [];

    public bool IsDone => Violations.Count >= MostViolations;

    /// <summary>Puts a step's fault family on the bench: the card as before the step, chance of its own.</summary>
    public void Load(ReadOnlySpan<byte> image, string fault, int step)
    {
        image.CopyTo(Card.Image);
        Card.Flicker(0, []);
        Chance = new Random(unchecked((seed * 1_000_003) + (step * 7919) + fault.Length + (fault[0] * 31)));
    }

    /// <summary>Recovers and judges: one state. The text is built only when something is wrong.</summary>
    public void Judge(Ledger ledger, FormattableText state)
    {
        States++;
        string? wrong;
        try
        {
            wrong = Recover() ?? oracle.Judge(Log, ledger);
        }
        catch (Exception error)
        {
            wrong = error.Message;
        }

        if (wrong is not null && !IsDone)
        {
            Violations.Add($"seed {seed}: {state()}: {wrong}");
        }
    }

    private string? Recover()
    {
        int writes = Card.Writes.Count;
        Card.Recover(Log);
        return Card.Writes.Count == writes ? null : "recovery writes to the card";
    }
}

public delegate string FormattableText();
