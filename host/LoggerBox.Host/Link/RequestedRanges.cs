using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Link;

/// <summary>A range that was asked for, in frames of so many bytes; up to <see cref="Position"/> they have come.</summary>
/// <param name="EndWanted">The logger says when it has sent it.</param>
internal sealed record RequestedRange(byte Tag, ByteRange Range, int Payload, bool EndWanted)
{
    public long Position { get; set; } = Range.Start;

    public ByteRange Rest => new(Position, Range.End);
}

/// <summary>What got lost on the way from the logger to the host: a stretch, and the length of the frames that carried it.</summary>
internal readonly record struct LostRange(ByteRange Range, int Payload);

/// <summary>
/// Requests on their way. The logger answers in their order and a line keeps the order of its bytes: what a later frame overtakes
/// is lost. That is known at once, without a wait.
/// </summary>
internal sealed class RequestedRanges
{
    private readonly LinkedList<RequestedRange> ranges = new();
    private readonly bool[] tagsUsed = new bool[256];

    public int Count => ranges.Count;

    /// <summary>Null when none is on its way.</summary>
    public RequestedRange? Newest => ranges.Last?.Value;

    /// <summary>Bytes that are still to come.</summary>
    public long Bytes => ranges.Sum(range => range.Rest.Length);

    /// <summary>This fetch asked for something under this tag, now or earlier.</summary>
    public bool Knows(byte tag) => tagsUsed[tag];

    public void Add(RequestedRange range)
    {
        ranges.AddLast(range);
        tagsUsed[range.Tag] = true;
    }

    /// <summary>A frame came: gives what it overtook. Nothing where its request is settled already: it was late, or comes twice.</summary>
    public IReadOnlyList<LostRange> Heard(byte tag, ByteRange frame)
    {
        List<LostRange> lost = Overtaken(tag);
        if (ranges.First is { Value: RequestedRange current } && current.Tag == tag && frame.End > current.Position)
        {
            if (frame.Start > current.Position)
            {
                lost.Add(new LostRange(new ByteRange(current.Position, frame.Start), current.Payload));
            }

            current.Position = frame.End;
            if (current.Rest.Length <= 0)
            {
                ranges.RemoveFirst();
            }
        }

        return lost;
    }

    /// <summary>The logger has sent everything up to this request: gives what did not come.</summary>
    public IReadOnlyList<LostRange> Ended(byte tag)
    {
        List<LostRange> lost = Overtaken(tag);
        if (ranges.First?.Value.Tag == tag)
        {
            lost.Add(DropFirst());
        }

        return lost;
    }

    private List<LostRange> Overtaken(byte tag)
    {
        List<LostRange> lost = [];
        bool isOnItsWay = ranges.Any(range => range.Tag == tag);
        while (isOnItsWay && ranges.First!.Value.Tag != tag)
        {
            lost.Add(DropFirst());
        }

        return lost;
    }

    private LostRange DropFirst()
    {
        RequestedRange first = ranges.First!.Value;
        ranges.RemoveFirst();
        return new LostRange(first.Rest, first.Payload);
    }
}
