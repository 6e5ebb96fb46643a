using System;
using System.Collections;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Sessions;

/// <summary>
/// A session's sample sets as they lie in its bytes, read block by block when somebody looks: a day has millions, and most who ask for a session
/// want none of them. Safe to read from several threads.
/// </summary>
public sealed class StoredSamples : IReadOnlyList<RecordedSample>
{
    [ThreadStatic]
    private static SampleBlock? block;

    private readonly byte[] bytes;
    private readonly BlockPlace[] blocks;

    // How many sets there are before each block, and after the last.
    private readonly int[] before;

    // Blocks come in order from a logger; of a session that somebody pieced together all sets are held once one is wanted.
    private readonly Lazy<RecordedSample[]>? sorted;
    private OpenBlock? latest;

    /// <param name="blocks">As they lie in the bytes; each holds some set.</param>
    internal StoredSamples(byte[] bytes, IReadOnlyList<BlockPlace> blocks)
    {
        this.bytes = bytes;
        this.blocks = [.. blocks];
        before = new int[blocks.Count + 1];
        for (int i = 0; i < blocks.Count; i++)
        {
            before[i + 1] = before[i] + blocks[i].Count;
        }

        sorted = IsInOrder() ? null : new Lazy<RecordedSample[]>(() => [.. AsTheyLie().OrderBy(sample => sample.Microseconds)]);
    }

    public int Count => before[^1];

    public RecordedSample this[int index]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(index);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Count);

            if (sorted is not null)
            {
                return sorted.Value[index];
            }

            // Neighbours are asked for one after the other: the last block is kept.
            OpenBlock? open = latest;
            if (open is null || index < before[open.Index] || index >= before[open.Index + 1])
            {
                open = Open(BlockOf(index));
                latest = open;
            }

            return open.Samples[index - before[open.Index]];
        }
    }

    /// <summary>Those from one moment to another, both included, in microseconds since the logger's boot.</summary>
    public IEnumerable<RecordedSample> Between(long from, long to) => sorted is null
        ? InBlocks(from, to)
        : Within(sorted.Value, from, to);

    /// <summary>The same, block by block.</summary>
    internal void Visit(long from, long to, SampleVisitor visit)
    {
        if (sorted is not null)
        {
            visit(Within(sorted.Value, from, to));
            return;
        }

        RecordedSample[] samples = new RecordedSample[SampleBlock.Capacity];
        for (int i = FirstEndingAt(from); i < blocks.Length && blocks[i].FirstMicroseconds <= to; i++)
        {
            Read(i, samples);
            visit(Within(new ArraySegment<RecordedSample>(samples, 0, blocks[i].Count), from, to));
        }
    }

    /// <summary>Which is the first at or after a moment; their count where none is.</summary>
    public int IndexAt(long microseconds)
    {
        if (sorted is not null)
        {
            return RecordedSession.IndexAt(sorted.Value, 0, Count, microseconds);
        }

        int place = FirstEndingAt(microseconds);
        return place == blocks.Length ? Count : RecordedSession.IndexAt(this, before[place], before[place + 1], microseconds);
    }

    public IEnumerator<RecordedSample> GetEnumerator() => (sorted is null ? AsTheyLie() : sorted.Value).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private bool IsInOrder()
    {
        for (int i = 0; i < blocks.Length; i++)
        {
            if (!blocks[i].IsInOrder || (i > 0 && blocks[i].FirstMicroseconds < blocks[i - 1].LatestMicroseconds))
            {
                return false;
            }
        }

        return true;
    }

    private IEnumerable<RecordedSample> InBlocks(long from, long to)
    {
        for (int i = FirstEndingAt(from); i < blocks.Length && blocks[i].FirstMicroseconds <= to; i++)
        {
            foreach (RecordedSample sample in Open(i).Samples)
            {
                if (sample.Microseconds >= from && sample.Microseconds <= to)
                {
                    yield return sample;
                }
            }
        }
    }

    private IEnumerable<RecordedSample> AsTheyLie()
    {
        for (int i = 0; i < blocks.Length; i++)
        {
            foreach (RecordedSample sample in Open(i).Samples)
            {
                yield return sample;
            }
        }
    }

    private int BlockOf(int index)
    {
        int found = Array.BinarySearch(before, index);
        return found < 0 ? ~found - 1 : found;
    }

    private int FirstEndingAt(long microseconds)
    {
        int low = 0;
        int high = blocks.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = blocks[middle].LatestMicroseconds < microseconds ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    // Those of one moment to another, of some in order of time.
    private static ArraySegment<RecordedSample> Within(ArraySegment<RecordedSample> samples, long from, long to)
    {
        int begin = RecordedSession.IndexAt(samples, 0, samples.Count, from);
        int end = to == long.MaxValue ? samples.Count : RecordedSession.IndexAt(samples, begin, samples.Count, to + 1);
        return samples[begin..end];
    }

    private OpenBlock Open(int index)
    {
        RecordedSample[] samples = new RecordedSample[blocks[index].Count];
        Read(index, samples);
        return new OpenBlock(index, samples);
    }

    // A block that was sound when the session was taken in and is not any more gives readings that are missing, never wrong ones.
    private void Read(int index, RecordedSample[] samples)
    {
        block ??= new SampleBlock();
        BlockPlace place = blocks[index];
        ByteReader reader = new(bytes);
        reader.Restart(place.BodyOffset, place.BodyLength);
        bool sound = block.TryRead(reader) && block.Count == place.Count;
        SampleSet set = new();
        for (int i = 0; i < place.Count; i++)
        {
            if (sound)
            {
                block.CopyTo(i, set);
                samples[i] = new RecordedSample(set.Microseconds, set.Values[Channel.Speed], set.Values[Channel.Main], set.Values[Channel.Clutch], set.Values[Channel.Converter]);
            }
            else
            {
                long time = place.FirstMicroseconds + ((place.LastMicroseconds - place.FirstMicroseconds) * i / Math.Max(1, place.Count - 1));
                samples[i] = new RecordedSample(time, SampleSet.Missing, SampleSet.Missing, SampleSet.Missing, SampleSet.Missing);
            }
        }
    }

    private sealed record OpenBlock(int Index, RecordedSample[] Samples);
}
