using System;
using System.Collections.Generic;

namespace LoggerBox.Link.Tests.Line;

/// <summary>
/// One direction of a line: bytes leave one after the other at the line's pace and arrive a latency later, some of them damaged.
/// It knows no clock: every call says what time it is, in nanoseconds, so real and virtual time run the same model.
/// </summary>
public sealed class LineDirection
{
    private readonly LineQuality quality;
    private readonly LineFaults faults;
    private readonly Queue<(long Arrival, byte Value)> onTheWay = new();
    private long wireFree;

    public LineDirection(LineQuality quality, int seed)
    {
        this.quality = quality;
        faults = new LineFaults(quality, new Random(seed));
    }

    /// <summary>Bytes put on the wire so far.</summary>
    public long Sent { get; private set; }

    public long Faults => faults.Count;

    /// <summary>The plug is pulled before this byte: it and all later ones go nowhere, at the same pace.</summary>
    public long CutBefore { get; set; } = long.MaxValue;

    /// <summary>The plug takes this direction with it.</summary>
    public LineDirection? CutWith { get; set; }

    private bool IsCut => Sent > CutBefore;

    /// <summary>When the next byte arrives; null: none is on its way.</summary>
    public long? NextArrival => onTheWay.TryPeek(out var next) ? next.Arrival : null;

    /// <summary>Bytes that the sender's buffer takes now.</summary>
    public int Room(long now) => wireFree <= now ? quality.TransmitBuffer
        : (int)Math.Max(0, quality.TransmitBuffer - ((wireFree - now) / quality.NanosecondsPerByte));

    /// <summary>Takes what the sender's buffer has room for, and says how much that was.</summary>
    public int Send(long now, ReadOnlySpan<byte> bytes)
    {
        int taken = Math.Min(bytes.Length, Room(now));
        foreach (byte sent in bytes[..taken])
        {
            wireFree = Math.Max(wireFree, now) + quality.NanosecondsPerByte;
            byte value = sent;
            int copies = Sent++ >= CutBefore || CutWith is { IsCut: true } ? 0 : faults.Pass(ref value, wireFree);
            for (; copies > 0; copies--)
            {
                onTheWay.Enqueue((wireFree + quality.LatencyNanoseconds, value));
            }
        }

        return taken;
    }

    /// <summary>Gives what has arrived, and says how much that is.</summary>
    public int Receive(long now, Span<byte> buffer)
    {
        int count = 0;
        while (count < buffer.Length && onTheWay.TryPeek(out var next) && next.Arrival <= now)
        {
            buffer[count++] = onTheWay.Dequeue().Value;
        }

        return count;
    }
}
