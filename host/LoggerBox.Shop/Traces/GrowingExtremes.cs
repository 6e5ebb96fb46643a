using System;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Shop.Traces;

/// <summary>The extremes of the readings that have come so far: millions of them, in place.</summary>
internal struct GrowingExtremes()
{
    private int low = int.MaxValue;
    private int high = int.MinValue;
    private long sum;
    private int count;

    public void Add(int raw)
    {
        if (raw != SampleSet.Missing)
        {
            low = Math.Min(low, raw);
            high = Math.Max(high, raw);
            sum += raw;
            count++;
        }
    }

    /// <summary>Gives them away, and begins again.</summary>
    public Extremes Take()
    {
        Extremes taken = count == 0 ? Extremes.None : new Extremes(low, high, sum, count);
        this = new GrowingExtremes();
        return taken;
    }
}
