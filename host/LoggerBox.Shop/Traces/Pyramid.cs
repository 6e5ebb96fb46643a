using System;
using System.Collections.Generic;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Shop.Traces;

/// <summary>
/// The extremes of a recording in cells of equal length, level over level, each cell twice as long as one below: a picture of any stretch reads
/// a few thousand cells however long the recording is, and no extreme is lost. Built once; the samples stay what they are.
/// </summary>
internal sealed class Pyramid
{
    // The lowest level has an eighth of the samples' memory; below it a picture reads the samples themselves.
    private const int SamplesInLowestCell = 16;

    // Wrong clocks in a damaged record can be any number; no recording lasts ten years.
    private const long LongestMicroseconds = 3650L * 24 * 3600 * 1_000_000;

    private readonly IReadOnlyList<RecordedSample> samples;
    private readonly List<Extremes[][]> levels = [];

    public Pyramid(IReadOnlyList<RecordedSample> samples)
    {
        bool hasPicture = samples.Count > 0 && samples[^1].Microseconds - samples[0].Microseconds is >= 0 and < LongestMicroseconds;
        this.samples = hasPicture ? samples : [];
        if (!hasPicture)
        {
            return;
        }

        Start = samples[0].Microseconds;
        End = samples[^1].Microseconds;
        int cells = Math.Max(1, samples.Count / SamplesInLowestCell);
        CellMicroseconds = Math.Max(1, (End - Start + cells) / cells);
        levels.Add(Lowest(cells));
        while (levels[^1][0].Length > 1)
        {
            levels.Add(Above(levels[^1]));
        }
    }

    /// <summary>Of the first and the last sample, microseconds since the logger's boot.</summary>
    public long Start { get; }

    public long End { get; }

    /// <summary>Length of a cell of the lowest level.</summary>
    public long CellMicroseconds { get; }

    public int Levels => levels.Count;

    public int SampleCount => samples.Count;

    public RecordedSample Sample(int index) => samples[index];

    public long CellLength(int level) => CellMicroseconds << level;

    public int Cells(int level) => levels[level][0].Length;

    public Extremes Cell(int level, int channel, int cell) => levels[level][channel][cell];

    /// <summary>The first sample at or after a time.</summary>
    public int IndexAt(long microseconds)
    {
        int low = 0;
        int high = samples.Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = samples[middle].Microseconds < microseconds ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    private Extremes[][] Lowest(int cells)
    {
        Extremes[][] level = [new Extremes[cells], new Extremes[cells], new Extremes[cells], new Extremes[cells]];
        foreach (RecordedSample sample in samples)
        {
            int cell = (int)((sample.Microseconds - Start) / CellMicroseconds);
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                level[channel][cell] = level[channel][cell].With(Extremes.Of(sample.Of(channel)));
            }
        }

        return level;
    }

    private static Extremes[][] Above(Extremes[][] below)
    {
        int cells = (below[0].Length + 1) / 2;
        Extremes[][] level = [new Extremes[cells], new Extremes[cells], new Extremes[cells], new Extremes[cells]];
        for (int channel = 0; channel < Channel.Count; channel++)
        {
            for (int cell = 0; cell < below[channel].Length; cell++)
            {
                level[channel][cell / 2] = level[channel][cell / 2].With(below[channel][cell]);
            }
        }

        return level;
    }
}
