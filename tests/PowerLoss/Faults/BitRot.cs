using System.Collections.Generic;

namespace LoggerBox.PowerLoss.Faults;

/// <summary>One bit of what the last writes left turns over; each bit of every page of the step, seen right after it and at the recording's end.</summary>
public sealed class BitRot : IFault
{
    public string Name => "bit rot";

    public void Try(Bench bench, IReadOnlyList<Step> steps, int index)
    {
        Step step = steps[index];
        CardWrite write = step.Write;
        write.New.CopyTo(bench.Card.Image, write.Offset);
        for (int at = 0; at < write.New.Length; at++)
        {
            Ledger ledger = Aftermath.WithoutByte(step.After, step, at);
            for (int bit = 0; bit < 8; bit++)
            {
                bench.Card.Image[write.Offset + at] ^= (byte)(1 << bit);
                string where = $"byte {at}, bit {bit}";
                bench.Judge(ledger, () => $"{Name}, step {index}, {where}");
                bench.Card.Image[write.Offset + at] ^= (byte)(1 << bit);
            }
        }

        write.Old.CopyTo(bench.Card.Image, write.Offset);
    }
}
