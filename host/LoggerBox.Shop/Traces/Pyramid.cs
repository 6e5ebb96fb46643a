using System;
using System.Collections.Generic;
using System.Threading.Tasks;
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

    // A part is worth a processor's while: some 60,000 sample sets.
    private const int CellsInPart = 4096;

    private readonly RecordedSession session;
    private readonly List<Extremes[][]> levels = [];

    public Pyramid(RecordedSession session)
    {
        this.session = session;
        IReadOnlyList<RecordedSample> samples = session.Samples;
        bool hasPicture = samples.Count > 0 && samples[^1].Microseconds - samples[0].Microseconds is >= 0 and < LongestMicroseconds;
        if (!hasPicture)
        {
            return;
        }

        SampleCount = samples.Count;
        Start = samples[0].Microseconds;
        End = samples[^1].Microseconds;
        int cells = Math.Max(1, samples.Count / SamplesInLowestCell);
        CellMicroseconds = Math.Max(1, (End - Start + cells) / cells);
        levels.Add(Lowest(cells));
        while (levels[^1][0].Length > 1)
        {
            levels.Add(Array.ConvertAll(levels[^1], Above));
        }
    }

    /// <summary>Of the first and the last sample, microseconds since the logger's boot.</summary>
    public long Start { get; }

    public long End { get; }

    /// <summary>Length of a cell of the lowest level.</summary>
    public long CellMicroseconds { get; }

    public int Levels => levels.Count;

    /// <summary>0 where there is nothing to show.</summary>
    public int SampleCount { get; }

    public RecordedSample Sample(int index) => session.Samples[index];

    public long CellLength(int level) => CellMicroseconds << level;

    public int Cells(int level) => levels[level][0].Length;

    public Extremes Cell(int level, int channel, int cell) => levels[level][channel][cell];

    /// <summary>The first sample at or after a time.</summary>
    public int IndexAt(long microseconds) => session.IndexAt(microseconds);

    // The samples have to be decoded, which takes the most time: processors do it, each its own cells. One is left for the page, which comes first.
    private Extremes[][] Lowest(int cells)
    {
        Extremes[][] level = [new Extremes[cells], new Extremes[cells], new Extremes[cells], new Extremes[cells]];
        ParallelOptions others = new() { MaxDegreeOfParallelism = Math.Max(1, Environment.ProcessorCount - 1) };
        Parallel.For(0, (cells + CellsInPart - 1) / CellsInPart, others, part => Fill(level, part * CellsInPart, Math.Min(cells, (part + 1) * CellsInPart)));
        return level;
    }

    private void Fill(Extremes[][] level, int first, int end)
    {
        GrowingExtremes[] growing = [new(), new(), new(), new()];
        int cell = first;
        long over = Start + ((cell + 1) * CellMicroseconds);
        session.VisitSamples(Start + (first * CellMicroseconds), Start + (end * CellMicroseconds) - 1, samples =>
        {
            foreach (ref readonly RecordedSample sample in samples)
            {
                for (; sample.Microseconds >= over; over += CellMicroseconds, cell++)
                {
                    Take(growing, level, cell);
                }

                growing[Channel.Speed].Add(sample.SpeedTenths);
                growing[Channel.Main].Add(sample.MainCounts);
                growing[Channel.Clutch].Add(sample.ClutchCounts);
                growing[Channel.Converter].Add(sample.ConverterCounts);
            }
        });

        Take(growing, level, cell);
    }

    private static void Take(GrowingExtremes[] growing, Extremes[][] level, int cell)
    {
        for (int channel = 0; channel < Channel.Count; channel++)
        {
            level[channel][cell] = growing[channel].Take();
        }
    }

    private static Extremes[] Above(Extremes[] below)
    {
        var level = new Extremes[(below.Length + 1) / 2];
        for (int cell = 0; cell < level.Length; cell++)
        {
            int first = 2 * cell;
            level[cell] = first + 1 < below.Length ? below[first].With(below[first + 1]) : below[first];
        }

        return level;
    }
}
