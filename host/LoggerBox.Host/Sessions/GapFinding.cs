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
    private readonly List<SessionGap> gaps = [];
    private long? last;
    private long records;
    private long bytes;

    /// <summary>Something is missing here.</summary>
    public void Lose(long moreRecords, long moreBytes)
    {
        records += moreRecords;
        bytes += moreBytes;
    }

    /// <summary>A record shows that time was accounted for from one moment to another, in microseconds.</summary>
    public void Pass(long from, long to)
    {
        if (records > 0 || bytes > 0)
        {
            Close(from);
        }

        last = last is long before ? Math.Max(before, to) : to;
    }

    public void Pass(SampleBlock block, SampleSet lastSet)
    {
        if (block.Count > 0)
        {
            Pass(block.FirstMicroseconds, lastSet.Microseconds + block.IntervalMicroseconds);
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
        gaps.Add(new SessionGap(last, to, records, bytes));
        records = 0;
        bytes = 0;
    }
}
