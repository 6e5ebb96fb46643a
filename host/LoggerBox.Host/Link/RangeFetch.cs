using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Link;

namespace LoggerBox.Host.Link;

/// <summary>
/// Brings ranges of one session across. Some requests are always on their way, so that the line never waits for the host; what got
/// lost is asked for again at once, before what has not been asked for yet, in frames as long as the line bears.
/// </summary>
internal sealed class RangeFetch
{
    // Enough for a sixth of a second at 921600 baud, in which a disk or a scheduler may pause; few at first, when the line is not known.
    private const int FewestBytesOnTheirWay = 1024;
    private const int MostBytesOnTheirWay = 16 * 1024;

    // Fewer than a logger keeps (PROTOCOL.md, Fetch), more than a round trip needs.
    private const int MostRequestsOnTheirWay = 32;
    private const int LongestRequest = 2 * Data.MaxPayload;

    private readonly FrameLine line;
    private readonly uint session;
    private readonly Action<Data> take;
    private readonly LinkedList<ByteRange> wanted;
    private readonly RequestedRanges requested = new();
    private readonly FrameLength frameLength = new();
    private readonly Data data = new();
    private readonly FetchEnd end = new();
    private readonly Refusal refusal = new();
    private readonly ByteRange whole;
    private readonly ByteRanges here = new();
    private long missing;
    private long came;

    /// <param name="wanted">In order; at least one.</param>
    /// <param name="take">Gets each piece with something new in it, in any order; the object is filled again afterwards.</param>
    public RangeFetch(FrameLine line, uint session, IReadOnlyList<ByteRange> wanted, Action<Data> take)
    {
        this.line = line;
        this.session = session;
        this.take = take;
        this.wanted = new LinkedList<ByteRange>(wanted);
        whole = new ByteRange(wanted[0].Start, wanted[^1].End);
        missing = wanted.Sum(range => range.Length);
        ByteRanges asked = new();
        foreach (ByteRange range in wanted)
        {
            asked.Add(range);
        }

        foreach (ByteRange range in asked.HolesIn(whole))
        {
            here.Add(range);
        }
    }

    /// <param name="silence">How long to wait for something new.</param>
    /// <exception cref="UserErrorException">Nothing new came for too long, or the logger refused.</exception>
    public void Run(TimeSpan silence)
    {
        Deadline patience = line.After(silence);
        while (missing > 0)
        {
            Ask();
            long before = missing;
            if (line.Next(patience, out MessageCode code))
            {
                Hear(code);
            }
            else if (patience.IsOver)
            {
                throw LinkErrors.Stuck(line.Port, session, missing);
            }
            else
            {
                Probe();
            }

            patience = missing < before ? line.After(silence) : patience;
        }
    }

    private void Ask()
    {
        long most = Math.Min(MostBytesOnTheirWay, FewestBytesOnTheirWay + came);
        while (wanted.First is { Value: ByteRange next } && requested.Bytes < most && requested.Count < MostRequestsOnTheirWay)
        {
            wanted.RemoveFirst();
            ByteRange now = next with { End = Math.Min(next.End, next.Start + Math.Min(LongestRequest, most)) };
            if (now.End < next.End)
            {
                wanted.AddFirst(next with { Start = now.End });
            }

            // Frames of one length: a short one at the end would be all overhead.
            long frames = (now.Length + frameLength.Payload - 1) / frameLength.Payload;
            RequestedRange request = new(line.NextTag(), now, (int)((now.Length + frames - 1) / frames), EndWanted: wanted.Count == 0);
            requested.Add(request);
            Send(request);
        }
    }

    /// <summary>
    /// Nothing comes: bytes are held back somewhere, or requests or answers got lost. A range of no bytes, answered by nothing but its
    /// end, tells which: what it overtakes is lost. To ask for everything again would bring twice what was only late.
    /// </summary>
    private void Probe()
    {
        if (requested.Newest is not { Range.Length: 0 })
        {
            requested.Add(new RequestedRange(line.NextTag(), new ByteRange(whole.End, whole.End), Data.MaxPayload, EndWanted: true));
        }

        Send(requested.Newest!);
    }

    private void Send(RequestedRange range) => line.Send(new Fetch
    {
        SessionNumber = session,
        Offset = (uint)range.Rest.Start,
        Length = (uint)range.Rest.Length,
        PayloadLength = (ushort)range.Payload,
        Tag = range.Tag,
        EndWanted = range.EndWanted,
    });

    private void Hear(MessageCode code)
    {
        if (code == MessageCode.Data && data.TryRead(line.Content) && IsWanted())
        {
            ByteRange range = new(data.Offset, data.Offset + (long)data.Length);
            WantAgain(Counted(requested.Heard(data.Tag, range)));
            frameLength.Came(data.Length);
            Take(range);
        }
        else if (code == MessageCode.FetchEnd && end.TryRead(line.Content) && end.SessionNumber == session)
        {
            WantAgain(Counted(requested.Ended(end.Tag)));
        }
        else if (code == MessageCode.Refusal && refusal.TryRead(line.Content) && refusal.Request == MessageCode.Fetch
            && refusal.Reason != RefusalReason.TooManyRequests)
        {
            throw LinkErrors.Refused(line.Port, MessageCode.Fetch, refusal.Reason);
        }
    }

    private bool IsWanted() =>
        requested.Knows(data.Tag) && data.Length > 0 && data.Offset >= whole.Start && data.Offset + (long)data.Length <= whole.End;

    private void Take(ByteRange range)
    {
        long fresh = here.HolesIn(range).Sum(hole => hole.Length);
        if (fresh > 0)
        {
            take(data);
            here.Add(range);
            came += fresh;
            missing -= fresh;
        }
    }

    private IReadOnlyList<LostRange> Counted(IReadOnlyList<LostRange> lost)
    {
        foreach (LostRange range in lost)
        {
            for (long left = range.Range.Length; left > 0; left -= range.Payload)
            {
                frameLength.Lost(range.Payload);
            }
        }

        return lost;
    }

    private void WantAgain(IReadOnlyList<LostRange> lost)
    {
        // What came by another way meanwhile is not asked for again.
        List<ByteRange> holes = lost.SelectMany(range => here.HolesIn(range.Range)).ToList();
        for (int i = holes.Count - 1; i >= 0; i--)
        {
            bool adjoins = wanted.First is { Value: ByteRange next } && next.Start == holes[i].End;
            ByteRange hole = adjoins ? holes[i] with { End = wanted.First!.Value.End } : holes[i];
            if (adjoins)
            {
                wanted.RemoveFirst();
            }

            wanted.AddFirst(hole);
        }
    }
}
