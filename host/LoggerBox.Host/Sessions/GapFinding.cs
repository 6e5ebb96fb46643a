using System;
using System.Collections.Generic;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Sessions;

/// <summary>
/// Puts times to what is missing of a session. Sample blocks tell them to the interval, and what stands beside blocks in time: header, dropouts,
/// session end. Holds and events do not: they are written after samples that are still to come.
/// </summary>
internal sealed class GapFinding
{
    // More places than anybody reads, and than a failing card leaves: what follows is told together.
    private const int MostGaps = 10_000;

    private readonly List<SessionGap> gaps = [];
    private long? last;
    private long interval;
    private long records;
    private long bytes;

    /// <summary>Something is missing here.</summary>
    public void Lose(long moreRecords, long moreBytes)
    {
        records += moreRecords;
        bytes += moreBytes;
    }

    public void Begin(SessionHeader header)
    {
        interval = header.SampleIntervalMicroseconds;
        Pass(header.StartMicroseconds, header.StartMicroseconds);
    }

    /// <summary>A dropout begins with the last set before it, whose own interval is accounted for.</summary>
    public void Pass(DropoutRecord dropout) =>
        Pass(Math.Max(dropout.FromMicroseconds, Math.Min(dropout.FromMicroseconds + interval, dropout.ToMicroseconds)), dropout.ToMicroseconds);

    /// <summary>A record shows that time was accounted for from one moment to another, in microseconds.</summary>
    public void Pass(long from, long to)
    {
        if (records > 0 || bytes > 0)
        {
            Close(from);
        }

        last = last is long before ? Math.Max(before, to) : to;
    }

    public void Pass(BlockPlace block)
    {
        interval = block.IntervalMicroseconds;
        if (block.Count > 0)
        {
            Pass(block.FirstMicroseconds, block.LastMicroseconds + block.IntervalMicroseconds);
        }
    }

    /// <summary>Nothing more comes.</summary>
    public IReadOnlyList<SessionGap> Finish()
    {
        if (records > 0 || bytes > 0)
        {
            Close(null);
        }

        return gaps;
    }

    private void Close(long? to)
    {
        // A session ends with its last set, before the interval of that is over: no time is missing then, and none runs backwards.
        bool isWithinLastSet = to < last && last - to <= interval;
        SessionGap gap = new(last, isWithinLastSet ? last : to, records, bytes);
        if (gaps.Count == MostGaps)
        {
            SessionGap before = gaps[^1];
            gap = new SessionGap(before.FromMicroseconds, gap.ToMicroseconds, before.Records + records, before.Bytes + bytes);
            gaps.RemoveAt(MostGaps - 1);
        }

        gaps.Add(gap);
        records = 0;
        bytes = 0;
    }
}
