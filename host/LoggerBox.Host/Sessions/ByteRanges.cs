using System;
using System.Collections.Generic;

namespace LoggerBox.Host.Sessions;

/// <summary>From the first byte to the one before <paramref name="End"/>.</summary>
public readonly record struct ByteRange(long Start, long End)
{
    public long Length => End - Start;
}

/// <summary>Which bytes of a session are here, kept as separate ranges in order.</summary>
public sealed class ByteRanges
{
    private readonly List<ByteRange> ranges = [];

    public IReadOnlyList<ByteRange> All => ranges;

    public void Add(ByteRange added)
    {
        if (added.Length <= 0)
        {
            return;
        }

        int first = ranges.FindIndex(range => range.End >= added.Start);
        if (first < 0)
        {
            ranges.Add(added);
            return;
        }

        int last = first;
        while (last < ranges.Count && ranges[last].Start <= added.End)
        {
            added = new ByteRange(Math.Min(added.Start, ranges[last].Start), Math.Max(added.End, ranges[last].End));
            last++;
        }

        ranges.RemoveRange(first, last - first);
        ranges.Insert(first, added);
    }

    /// <summary>What of <paramref name="whole"/> is not here, in order.</summary>
    public IReadOnlyList<ByteRange> HolesIn(ByteRange whole)
    {
        List<ByteRange> holes = [];
        long from = whole.Start;
        foreach (ByteRange range in ranges)
        {
            if (range.End <= from)
            {
                continue;
            }

            if (range.Start >= whole.End)
            {
                break;
            }

            if (range.Start > from)
            {
                holes.Add(new ByteRange(from, range.Start));
            }

            from = range.End;
        }

        if (from < whole.End)
        {
            holes.Add(new ByteRange(from, whole.End));
        }

        return holes;
    }
}
