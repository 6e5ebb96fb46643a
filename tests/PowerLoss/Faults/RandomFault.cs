using System;
using System.Collections.Generic;

namespace LoggerBox.PowerLoss.Faults;

/// <summary>One state: a cut of this step, or damage to an earlier one, of a random kind at a random place.</summary>
public static class RandomFault
{
    private const int Kinds = 8;

    public static void Try(Bench bench, IReadOnlyList<Step> steps, int index)
    {
        int kind = bench.Chance.Next(Kinds);
        if (kind < 5 || index == 0)
        {
            Cut(bench, steps[index], kind, index);
        }
        else
        {
            Damage(bench, steps[bench.Chance.Next(index)], steps[index - 1].After, kind, index);
        }
    }

    private static void Cut(Bench bench, Step step, int kind, int index)
    {
        CardWrite write = step.Write;
        Span<byte> image = bench.Card.Image.AsSpan(write.Offset, write.New.Length);
        int cut = bench.Chance.Next(write.New.Length);
        int inUnit = Card.Unit - (cut % Card.Unit);
        int inPage = Card.Page - (cut % Card.Page);
        write.New.AsSpan(0, cut).CopyTo(image);
        switch (kind)
        {
            case 1:
                bench.Chance.NextBytes(image.Slice(cut, inUnit));
                break;
            case 2:
                bench.Chance.NextBytes(image.Slice(cut, inPage));
                break;
            case 3:
                write.Old.AsSpan(0, cut).CopyTo(image);
                write.New.AsSpan(cut).CopyTo(image[cut..]);
                break;
            case 4:
                bench.Card.Flicker(write.Offset + cut, write.New.AsSpan(cut, inUnit).ToArray());
                break;
        }

        bench.Judge(step.During.Torn(), () => $"one hour, step {index}, cut kind {kind} at {cut}");
        bench.Card.Flicker(0, []);
        write.Old.CopyTo(image);
    }

    private static void Damage(Bench bench, Step earlier, Ledger now, int kind, int index)
    {
        CardWrite write = earlier.Write;
        Span<byte> image = bench.Card.Image.AsSpan(write.Offset, write.New.Length);
        int at = bench.Chance.Next(write.New.Length);
        int page = at / Card.Page;
        Span<byte> wholePage = image.Slice(page * Card.Page, Card.Page);
        Ledger ledger = kind == 7 ? Aftermath.WithoutByte(now, earlier, at) : Aftermath.WithoutPage(now, earlier, page);
        switch (kind)
        {
            case 5:
                write.Old.AsSpan(page * Card.Page, Card.Page).CopyTo(wholePage);
                break;
            case 6:
                bench.Chance.NextBytes(wholePage);
                break;
            default:
                image[at] ^= (byte)(1 << bench.Chance.Next(8));
                break;
        }

        bench.Judge(ledger, () => $"one hour, step {index}, damage kind {kind} to the write at {write.Offset}, byte {at}");
        write.New.CopyTo(image);
    }
}
