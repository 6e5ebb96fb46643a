using System;
using System.Collections.Generic;

namespace LoggerBox.PowerLoss.Faults;

/// <summary>
/// Power fails, the logger recovers and records, power fails again, and a third time: cuts of the recovery itself and of all that it leads to.
/// </summary>
public sealed class RepeatedCuts(int firstStride, int secondStride, int thirdStride) : IFault
{
    public string Name => "cuts three deep";

    public void Try(Bench bench, IReadOnlyList<Step> steps, int index)
    {
        CardWrite write = steps[index].Write;
        for (int cut = 0; cut <= write.New.Length && !bench.IsDone; cut += firstStride)
        {
            Leave(bench, write, cut);
            string where = $"step {index}, byte {cut}";
            Second(bench, new Sequel(bench, steps[index].During, steps[index].BootCount + 1), steps[index].BootCount + 2, where);
            write.Old.CopyTo(bench.Card.Image, write.Offset);
        }
    }

    private void Second(Bench bench, Sequel sequel, int start, string where)
    {
        sequel.Undo();
        for (int i = 0; i < sequel.Steps.Count; i++)
        {
            Step step = sequel.Steps[i];
            for (int cut = 0; cut < step.Write.New.Length; cut += secondStride)
            {
                Leave(bench, step.Write, cut);
                int at = cut;
                int second = i;
                bench.Judge(step.During, () => $"{Name}, {where}, then write {second}, byte {at}");
                if (cut % thirdStride == 0)
                {
                    Third(bench, new Sequel(bench, step.During, start), $"{where}, then write {i}, byte {cut}");
                }
            }

            step.Write.New.CopyTo(bench.Card.Image, step.Write.Offset);
        }

        bench.Judge(sequel.Ledger, () => $"{Name}, {where}, then a whole session");
        sequel.Undo();
    }

    private void Third(Bench bench, Sequel sequel, string where)
    {
        bench.Judge(sequel.Ledger, () => $"{Name}, {where}, then a whole session");
        sequel.Undo();
        for (int i = 0; i < sequel.Steps.Count; i++)
        {
            Step step = sequel.Steps[i];
            for (int cut = 0; cut < step.Write.New.Length; cut += Card.Unit)
            {
                Leave(bench, step.Write, cut);
                int third = i;
                int at = cut;
                bench.Judge(step.During, () => $"{Name}, {where}, then write {third}, byte {at}");
            }

            step.Write.New.CopyTo(bench.Card.Image, step.Write.Offset);
        }

        sequel.Undo();
    }

    // Every second cut leaves the unit that was being programmed undefined.
    private static void Leave(Bench bench, CardWrite write, int cut)
    {
        Span<byte> image = bench.Card.Image.AsSpan(write.Offset, write.New.Length);
        write.Old.CopyTo(image);
        write.New.AsSpan(0, cut).CopyTo(image);
        if (bench.Chance.Next(2) == 0)
        {
            bench.Chance.NextBytes(image.Slice(cut, Math.Min(Card.Unit - (cut % Card.Unit), image.Length - cut)));
        }
    }
}
