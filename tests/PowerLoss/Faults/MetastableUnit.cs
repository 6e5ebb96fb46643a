using System;
using System.Collections.Generic;

namespace LoggerBox.PowerLoss.Faults;

/// <summary>
/// The unit that was being programmed reads differently from one read to the next: whole at one recovery, spoiled at another, and both ways
/// inside one. A session that is recorded behind it must not suffer.
/// </summary>
public sealed class MetastableUnit(int draws) : IFault
{
    public string Name => "metastable bits";

    public void Try(Bench bench, IReadOnlyList<Step> steps, int index)
    {
        CardWrite write = steps[index].Write;
        int end = write.Offset + write.New.Length;
        for (int unit = write.Offset; unit < end; unit += Card.Unit)
        {
            Span<byte> image = bench.Card.Image.AsSpan(unit, Card.Unit);
            ReadOnlySpan<byte> whole = write.New.AsSpan(unit - write.Offset, Card.Unit);
            for (int draw = 0; draw < draws; draw++)
            {
                byte[] torn = whole.ToArray();
                torn[bench.Chance.Next(Card.Unit)] ^= (byte)(1 << bench.Chance.Next(8));
                bool wholeFirst = draw % 2 == 0;
                (wholeFirst ? torn : whole).CopyTo(image);
                bench.Card.Flicker(unit, wholeFirst ? whole.ToArray() : torn);
                JudgeTwice(bench, steps[index], $"step {index}, unit at {unit - write.Offset}, draw {draw}");
                bench.Card.Flicker(0, []);
            }

            whole.CopyTo(image);
        }

        BadForOnce(bench, steps[index]);
        write.Old.CopyTo(bench.Card.Image, write.Offset);
    }

    // The write had returned; one unit of it cannot be read at the next start, and can at the one after that.
    private void BadForOnce(Bench bench, Step step)
    {
        CardWrite write = step.Write;
        for (int unit = 0; unit < write.New.Length; unit += Card.Unit)
        {
            byte[] bad = new byte[Card.Unit];
            bench.Chance.NextBytes(bad);
            Span<byte> image = bench.Card.Image.AsSpan(write.Offset + unit, Card.Unit);
            bad.CopyTo(image);
            Sequel sequel = new(bench, step.After, step.BootCount + 1);
            if (image.SequenceEqual(bad))
            {
                write.New.AsSpan(unit, Card.Unit).CopyTo(image);
            }

            int at = unit;
            bench.Judge(sequel.Ledger, () => $"{Name}, step {step.Write.Offset / Card.Page}, unit at {at} bad for once");
            sequel.Undo();
            write.New.CopyTo(bench.Card.Image, write.Offset);
        }
    }

    private void JudgeTwice(Bench bench, Step step, string where)
    {
        Ledger ledger = step.During.Torn();
        bench.Judge(ledger, () => $"{Name}, {where}, first look");
        bench.Judge(ledger, () => $"{Name}, {where}, second look");
        Sequel sequel = new(bench, ledger, step.BootCount + 1);
        bench.Judge(sequel.Ledger, () => $"{Name}, {where}, after another session");
        bench.Judge(sequel.Ledger, () => $"{Name}, {where}, after another session, second look");
        sequel.Undo();
    }
}
