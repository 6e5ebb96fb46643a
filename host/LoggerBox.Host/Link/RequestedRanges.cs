using System.Collections.Generic;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Link;

/// <summary>A range that was asked for: in the order of the requests its bytes come, up to <paramref name="Position"/> they have.</summary>
internal sealed record RequestedRange(ByteRange Range, int Payload)
{
    public long Position { get; set; } = Range.Start;

    public ByteRange Rest => new(Position, Range.End);
}

/// <summary>What is lost on the way from the logger to the host: a stretch, and the length of the frames that carried it.</summary>
internal readonly record struct LostRange(ByteRange Range, int Payload);

/// <summary>
/// Requests on their way. The logger answers in their order and a line keeps the order of its bytes: what a later frame overtakes
/// is lost. That is known at once, without a wait.
/// </summary>
internal sealed class RequestedRanges
{
    private readonly LinkedList<RequestedRange> ranges = new();

    public int Count => ranges.Count;

    /// <summary>Bytes that are still to come.</summary>
    public long Bytes { get; private set; }

    public void Add(ByteRange range, int payload)
    {
        ranges.AddLast(new RequestedRange(range, payload));
        Bytes += range.Length;
    }

    /// <summary>A frame came: gives what it overtook. Nothing where nobody asked for it: it was late, or comes twice.</summary>
    public IEnumerable<LostRange> Heard(ByteRange frame)
    {
        if (!Contain(frame.Start))
        {
            yield break;
        }

        while (ranges.First is { Value: RequestedRange first } && !Holds(first, frame.Start))
        {
            yield return Drop(first);
        }

        RequestedRange current = ranges.First!.Value;
        if (frame.Start > current.Position)
        {
            yield return new LostRange(new ByteRange(current.Position, frame.Start), current.Payload);
        }

        Bytes -= frame.End - current.Position;
        current.Position = frame.End;
        if (current.Rest.Length <= 0)
        {
            Bytes += -current.Rest.Length;
            ranges.RemoveFirst();
        }
    }

    /// <summary>The logger has sent everything up to the range that begins here.</summary>
    public IEnumerable<LostRange> Ended(long start)
    {
        bool isKnown = false;
        foreach (RequestedRange range in ranges)
        {
            isKnown |= range.Range.Start == start;
        }

        while (isKnown && ranges.First is { Value: RequestedRange first })
        {
            isKnown = first.Range.Start != start;
            yield return Drop(first);
        }
    }

    /// <summary>Nothing comes any more: all that was asked for.</summary>
    public IEnumerable<LostRange> GivenUp()
    {
        while (ranges.First is { Value: RequestedRange first })
        {
            yield return Drop(first);
        }
    }

    private static bool Holds(RequestedRange range, long offset) => offset >= range.Position && offset < range.Range.End;

    private bool Contain(long offset)
    {
        foreach (RequestedRange range in ranges)
        {
            if (Holds(range, offset))
            {
                return true;
            }
        }

        return false;
    }

    private LostRange Drop(RequestedRange first)
    {
        ranges.RemoveFirst();
        Bytes -= first.Rest.Length;
        return new LostRange(first.Rest, first.Payload);
    }
}
