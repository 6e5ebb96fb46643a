using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Calibrating;

/// <summary>What the latest readings of one loop come to.</summary>
public enum LoopReading
{
    /// <summary>Too few yet.</summary>
    Waiting,
    Open,
    Shorted,
    Moving,
    Steady,
}

/// <summary>The latest seconds of one loop current, and whether they stand still enough to be a point of a calibration.</summary>
public sealed class SteadyCounts
{
    private const long WindowMicroseconds = 3_000_000;
    private const int Fewest = 12;

    // Of 12800 counts from 4 to 20 mA. A loop's noise is some counts; what moves or scatters by more is a pressure that is still being set, or a bad contact.
    private const double MostDrift = 5;
    private const double MostScatter = 24;

    // Bands after NAMUR NE 43 (3.8 and 20.5 mA), 800 counts a milliampere.
    private const double LowestCounts = 3.8 * 800;
    private const double HighestCounts = 20.5 * 800;

    private readonly List<(long Microseconds, short Counts)> window = [];

    /// <summary>Mean of the window without its tenth at either end: a lone spike is none of the pressure's.</summary>
    public double Mean { get; private set; }

    public LoopReading State { get; private set; }

    /// <param name="microseconds">The logger's own time; a reading that is told twice counts once.</param>
    public void Add(long microseconds, short counts)
    {
        if (counts == SampleSet.Missing || (window.Count > 0 && microseconds <= window[^1].Microseconds))
        {
            return;
        }

        window.Add((microseconds, counts));
        window.RemoveAll(one => one.Microseconds < microseconds - WindowMicroseconds);
        Judge();
    }

    /// <summary>What was read so far is of another pressure.</summary>
    public void Clear()
    {
        window.Clear();
        State = LoopReading.Waiting;
    }

    private void Judge()
    {
        double[] all = [.. window.Select(one => (double)one.Counts)];
        Mean = Trimmed(all);
        State = Mean < LowestCounts ? LoopReading.Open
            : Mean > HighestCounts ? LoopReading.Shorted
            : window.Count < Fewest || window[^1].Microseconds - window[0].Microseconds < WindowMicroseconds * 8 / 10 ? LoopReading.Waiting
            : Math.Abs(Trimmed(all[(all.Length / 2)..]) - Trimmed(all[..(all.Length / 2)])) > MostDrift || Scatter(all) > MostScatter ? LoopReading.Moving
            : LoopReading.Steady;
    }

    private static double Trimmed(double[] values) => values.Order().Skip(values.Length / 10).SkipLast(values.Length / 10).Average();

    private double Scatter(double[] values) =>
        Math.Sqrt(values.Order().Skip(values.Length / 10).SkipLast(values.Length / 10).Average(value => (value - Mean) * (value - Mean)));
}
