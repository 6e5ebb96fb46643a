using System;
using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.PowerLoss.Faults;

/// <summary>
/// The card wrote a block, or one page of it, to another place than asked, and said that it was done: what was to be there is missing, and
/// what stood at the other place is gone. Seen at the next start, and after the session that is recorded then. Cards address whole pages; that
/// the other place begins inside one is tried, too, but for pages of the same session: whole records of its own that a card moved within a
/// page cannot be told from records that stand where they belong.
/// </summary>
/// <param name="placeStride">Of the places inside a page, one in so many; of the pages all.</param>
public sealed class MisdirectedWrite(int placeStride) : IFault
{
    public string Name => "misdirected write";

    public void Try(Bench bench, IReadOnlyList<Step> steps, int index)
    {
        byte[] before = [.. bench.Card.Image];
        CardWrite write = steps[index].Write;
        int count = write.New.Length / Card.Page;
        Astray(bench, steps, index, 0, count, before);
        for (int page = 0; page < count && count > 1; page++)
        {
            Astray(bench, steps, index, page, 1, before);
        }
    }

    private void Astray(Bench bench, IReadOnlyList<Step> steps, int index, int page, int count, byte[] before)
    {
        CardWrite write = steps[index].Write;
        int from = page * Card.Page;
        int length = count * Card.Page;
        int asked = write.Offset + from;
        for (int place = 0; place + length <= before.Length; place += Card.Unit)
        {
            bool inside = place % Card.Page != 0;
            if (place == asked || (inside && (bench.Chance.Next(placeStride) != 0 || HitsItself(steps, index, place, length))))
            {
                continue;
            }

            Span<byte> image = bench.Card.Image;
            write.New.CopyTo(image[write.Offset..]);
            write.Old.AsSpan(from, length).CopyTo(image[asked..]);
            write.New.AsSpan(from, length).CopyTo(image[place..]);
            Ledger ledger = Lost(steps, index, page, count, place, length);
            string where = $"step {index}, {count} pages from {page} on written to byte {place}";
            bench.Judge(ledger, () => $"{Name}, {where}");
            Sequel sequel = new(bench, ledger, steps[index].BootCount + 1);
            bench.Judge(sequel.Ledger, () => $"{Name}, {where}, after another session");
            before.CopyTo(bench.Card.Image, 0);
        }
    }

    private static Ledger Lost(IReadOnlyList<Step> steps, int index, int page, int count, int place, int length)
    {
        Ledger ledger = steps[index].After;
        for (int i = page; i < page + count; i++)
        {
            ledger = Aftermath.WithoutPage(ledger, steps[index], i);
        }

        for (int hit = place / Card.Page; hit * Card.Page < place + length; hit++)
        {
            Step? owner = LastOn(hit, steps.Take(index + 1));
            if (owner is not null && owner.Generation == steps[index].Generation)
            {
                ledger = Aftermath.WithoutPage(ledger, owner, hit - (owner.Write.Offset / Card.Page));
            }
        }

        return WithOlderLog(ledger, steps, index);
    }

    private static bool HitsItself(IReadOnlyList<Step> steps, int index, int place, int length)
    {
        bool hits = false;
        for (int hit = place / Card.Page; hit * Card.Page < place + length; hit++)
        {
            Step? owner = LastOn(hit, steps.Take(index + 1));
            hits |= owner is not null && (owner.Session == steps[index].Session || owner.Session == steps[index].Note);
        }

        return hits;
    }

    // Where the beginning of a new log is what is lost, the old one behind it is found again.
    private static Ledger WithOlderLog(Ledger ledger, IReadOnlyList<Step> steps, int index)
    {
        Step first = steps.First(step => step.Generation == steps[index].Generation);
        ledger = ledger.Copy();
        ledger.Sessions.AddRange(first.During.Sessions.Where(session => session.Free && ledger.Find(session.Number) is null));
        return ledger;
    }

    private static Step? LastOn(int page, IEnumerable<Step> steps) => steps.LastOrDefault(step =>
        page * Card.Page >= step.Write.Offset && page * Card.Page < step.Write.Offset + step.Write.New.Length);
}
