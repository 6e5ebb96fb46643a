using System;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Sessions;

/// <summary>Where in a session's bytes a sample block lies, and what its head says.</summary>
/// <param name="LastMicroseconds">Time of its last set, <paramref name="LatestMicroseconds"/> the latest of all.</param>
/// <param name="IntervalMicroseconds">Between its sets; 0 where they come unevenly.</param>
/// <param name="IsInOrder">No time runs backwards, as it may in bytes that no logger wrote.</param>
internal readonly record struct BlockPlace(
    int BodyOffset, int BodyLength, long FirstMicroseconds, long LastMicroseconds, long LatestMicroseconds, uint IntervalMicroseconds, int Count, bool IsInOrder)
{
    /// <summary>Of a block whose readings are known to be sound: its head is read, and its times where it has them; null where it has no such head.</summary>
    public static BlockPlace? Of(Envelope envelope, BlockHead head, ByteReader reader)
    {
        reader.Restart(envelope.BodyOffset, envelope.BodyLength);
        if (!head.TryRead(reader))
        {
            return null;
        }

        // The times of sets that come evenly follow from the head, and are in order.
        long last = head.FirstMicroseconds + (head.IntervalMicroseconds * (Math.Max(head.Count, 1) - 1L));
        long latest = head.Count == 0 ? long.MinValue : last;
        bool inOrder = true;
        for (int i = 0; i < head.Count && head.IntervalMicroseconds == 0; i++)
        {
            long time = head.FirstMicroseconds + reader.ReadUInt32();
            inOrder &= time >= last;
            last = time;
            latest = Math.Max(latest, time);
        }

        return reader.TooShort ? null : new BlockPlace(envelope.BodyOffset, envelope.BodyLength, head.FirstMicroseconds, last, latest, head.IntervalMicroseconds, head.Count, inOrder);
    }
}
