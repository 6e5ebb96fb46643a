using System;
using System.Collections.Generic;

namespace LoggerBox.PowerLoss.Faults;

/// <summary>The card said that it wrote a page and did not: what was there before, often an older session's page, is there still.</summary>
public sealed class ProgramNoOp : LostWrite
{
    public override string Name => "program no-op";

    protected override void Spoil(Span<byte> place, ReadOnlySpan<byte> old, ReadOnlySpan<byte> written) => old.CopyTo(place);
}

/// <summary>The card said that it erased a page and did not: flash can only clear bits, so old and new are mixed.</summary>
public sealed class EraseNoOp : LostWrite
{
    public override string Name => "erase no-op";

    protected override void Spoil(Span<byte> place, ReadOnlySpan<byte> old, ReadOnlySpan<byte> written)
    {
        for (int i = 0; i < place.Length; i++)
        {
            place[i] = (byte)(old[i] & written[i]);
        }
    }
}

/// <summary>A page of an earlier write is lost although its call returned; seen at every later moment while nothing was written over it.</summary>
public abstract class LostWrite : IFault
{
    public abstract string Name { get; }

    public void Try(Bench bench, IReadOnlyList<Step> steps, int index)
    {
        // The step's own write has returned: the moment is the one after it.
        CardWrite last = steps[index].Write;
        last.New.CopyTo(bench.Card.Image, last.Offset);
        for (int earlier = index; earlier >= 0 && steps[earlier].Generation == steps[index].Generation; earlier--)
        {
            CardWrite write = steps[earlier].Write;
            Span<byte> image = bench.Card.Image.AsSpan(write.Offset, write.New.Length);
            for (int page = 0; page < write.New.Length / Card.Page; page++)
            {
                int at = page * Card.Page;
                Spoil(image.Slice(at, Card.Page), write.Old.AsSpan(at, Card.Page), write.New.AsSpan(at, Card.Page));
                Ledger ledger = Aftermath.WithoutPage(steps[index].After, steps[earlier], page);
                string where = $"step {index}, write {earlier}, page {page}";
                bench.Judge(ledger, () => $"{Name}, {where}");
                write.New.AsSpan(at, Card.Page).CopyTo(image[at..]);
            }
        }

        last.Old.CopyTo(bench.Card.Image, last.Offset);
    }

    protected abstract void Spoil(Span<byte> place, ReadOnlySpan<byte> old, ReadOnlySpan<byte> written);
}
