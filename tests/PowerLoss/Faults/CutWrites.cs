using System;
using System.Collections.Generic;

namespace LoggerBox.PowerLoss.Faults;

/// <summary>Power fails after any byte of a write; all before it is there, nothing after it.</summary>
public sealed class CleanCut : IFault
{
    public string Name => "clean cut";

    public void Try(Bench bench, IReadOnlyList<Step> steps, int index)
    {
        CardWrite write = steps[index].Write;
        for (int cut = 0; cut <= write.New.Length; cut++)
        {
            if (cut > 0)
            {
                bench.Card.Image[write.Offset + cut - 1] = write.New[cut - 1];
            }

            int at = cut;
            bench.Judge(steps[index].During, () => $"{Name}, step {index}, byte {at}");
        }

        write.Old.CopyTo(bench.Card.Image, write.Offset);
    }
}

/// <summary>The unit that was being programmed holds random bits.</summary>
public sealed class TornUnit(int draws) : IFault
{
    public string Name => "torn unit";

    public void Try(Bench bench, IReadOnlyList<Step> steps, int index)
    {
        CardWrite write = steps[index].Write;
        Span<byte> image = bench.Card.Image.AsSpan(write.Offset, write.New.Length);
        for (int unit = 0; unit < write.New.Length; unit += Card.Unit)
        {
            for (int draw = 0; draw < draws; draw++)
            {
                bench.Chance.NextBytes(image.Slice(unit, Card.Unit));
                int at = unit;
                bench.Judge(steps[index].During, () => $"{Name}, step {index}, byte {at}");
            }

            write.New.AsSpan(unit, Card.Unit).CopyTo(image[unit..]);
        }

        write.Old.CopyTo(image);
    }
}

/// <summary>Each unit of the page that was being written is all old or all new, in any mixture; the pages before it are new.</summary>
public sealed class MixedUnits(int draws) : IFault
{
    public string Name => "all-old or all-new units";

    public void Try(Bench bench, IReadOnlyList<Step> steps, int index)
    {
        CardWrite write = steps[index].Write;
        Ledger ledger = steps[index].During.Torn();
        Span<byte> image = bench.Card.Image.AsSpan(write.Offset, write.New.Length);
        for (int page = 0; page < write.New.Length; page += Card.Page)
        {
            for (int draw = 0; draw < draws; draw++)
            {
                for (int unit = page; unit < page + Card.Page; unit += Card.Unit)
                {
                    byte[] source = bench.Chance.Next(2) == 0 ? write.Old : write.New;
                    source.AsSpan(unit, Card.Unit).CopyTo(image[unit..]);
                }

                int at = page;
                bench.Judge(ledger, () => $"{Name}, step {index}, page at {at}");
            }

            write.New.AsSpan(page, Card.Page).CopyTo(image[page..]);
        }

        write.Old.CopyTo(image);
    }
}

/// <summary>Power fails inside a page: the rest of that page is undefined.</summary>
public sealed class NeighbourGarbage : IFault
{
    public string Name => "page-neighbour garbage";

    public void Try(Bench bench, IReadOnlyList<Step> steps, int index)
    {
        CardWrite write = steps[index].Write;
        Span<byte> image = bench.Card.Image.AsSpan(write.Offset, write.New.Length);
        for (int cut = 0; cut < write.New.Length; cut++)
        {
            int rest = Card.Page - (cut % Card.Page);
            bench.Chance.NextBytes(image.Slice(cut, rest));
            int at = cut;
            bench.Judge(steps[index].During, () => $"{Name}, step {index}, byte {at}");
            image[cut] = write.New[cut];
        }

        write.Old.CopyTo(image);
    }
}

/// <summary>The card wrote the pages of a block in another order: any of them may be there when power fails.</summary>
public sealed class PagesOutOfOrder : IFault
{
    public string Name => "out-of-order pages";

    public void Try(Bench bench, IReadOnlyList<Step> steps, int index)
    {
        CardWrite write = steps[index].Write;
        Ledger ledger = steps[index].During.Torn();
        Span<byte> image = bench.Card.Image.AsSpan(write.Offset, write.New.Length);
        int pages = write.New.Length / Card.Page;
        for (int set = 0; set < 1 << pages; set++)
        {
            for (int page = 0; page < pages; page++)
            {
                byte[] source = ((set >> page) & 1) == 0 ? write.Old : write.New;
                source.AsSpan(page * Card.Page, Card.Page).CopyTo(image[(page * Card.Page)..]);
            }

            int written = set;
            bench.Judge(ledger, () => $"{Name}, step {index}, pages {written:B}");
        }

        write.Old.CopyTo(image);
    }
}
