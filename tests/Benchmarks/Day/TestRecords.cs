using System;
using System.Collections.Generic;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Benchmarks.Day;

/// <summary>What the capture engine kept of one whole test on the simulated truck, to be put into a longer recording.</summary>
internal sealed class TestRecords
{
    private readonly RecordedSession session;
    private readonly long start;

    public TestRecords(byte[] bytes)
    {
        session = SessionDecoder.Decode(bytes).Session;
        start = session.Header.StartMicroseconds;
        Header = session.Header;
        Header.StartMicroseconds = 0;
    }

    public SessionHeader Header { get; }

    /// <summary>Gives the records out again as if the test had begun at this time.</summary>
    public void At(long microseconds, Action<IRecord> append)
    {
        long moved = microseconds - start;
        foreach (IRecord record in Records())
        {
            Move(record, moved);
            append(record);
            Move(record, -moved);
        }
    }

    private IEnumerable<IRecord> Records() => [.. session.Engagements, .. session.RunUps, .. session.Holds];

    private static void Move(IRecord record, long by)
    {
        switch (record)
        {
            case HoldRecord hold:
                hold.StartMicroseconds += by;
                break;
            case EngagementRecord engagement:
                engagement.StartMicroseconds += by;
                break;
            case RunUpRecord runUp:
                runUp.StartMicroseconds += by;
                break;
            default:
                break;
        }
    }
}
