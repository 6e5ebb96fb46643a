using System;
using System.Collections.Generic;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Link;

/// <summary>
/// The dialogue with one logger: the host asks, the logger answers. Every request is safe to repeat, so a lost frame costs only time,
/// and every wait ends, whatever comes down the line.
/// </summary>
public sealed class LoggerConnection
{
    private readonly HostLine line;
    private readonly LinkTiming timing;
    private readonly FrameEncoder encoder = new();
    private readonly FrameDecoder decoder = new();
    private readonly byte[] incoming = new byte[4096];
    private int incomingCount;
    private int incomingRead;
    private long bytesHeard;

    public LoggerConnection(HostLine line, LinkTiming? timing = null)
    {
        this.line = line;
        this.timing = timing ?? LinkTiming.Default;
    }

    public string Port => line.Port;

    internal int Attempts => timing.Attempts;

    /// <summary>The first request: who is there?</summary>
    /// <exception cref="UserErrorException">Nobody, noise, or a logger of a version that this program cannot understand.</exception>
    public HelloAnswer Hello()
    {
        HelloAnswer answer = new();
        Demand(new Hello { Version = LinkVersion.Current }, answer);
        if (answer.Version != LinkVersion.Current)
        {
            throw LinkErrors.OtherVersion(Port, answer.Version);
        }

        return answer.RecordVersion == RecordFormat.Version
            ? answer
            : throw LinkErrors.OtherRecords(Port, answer.RecordVersion, RecordFormat.Version);
    }

    /// <summary>All sessions of the logger, in the order in which it recorded them.</summary>
    public IReadOnlyList<SessionEntry> List()
    {
        List<SessionEntry> entries = [];
        SessionList page;
        do
        {
            // A new object for each page: the entries are kept.
            page = new SessionList();
            ushort first = (ushort)entries.Count;
            Demand(new List { FirstIndex = first }, page, () => page.FirstIndex == first);
            entries.AddRange(page.Entries.AsSpan(0, page.Count));
        }
        while (page.Count > 0 && entries.Count < page.Total);
        return entries;
    }

    /// <summary>Has the logger compare a session with its own and note that it is stored. Null: it agrees.</summary>
    public RefusalReason? Confirm(uint session, uint length, uint crc)
    {
        Confirmed answer = new();
        return Ask(new Confirm { SessionNumber = session, Length = length, Crc = crc }, answer, () => answer.SessionNumber == session, timing.Check);
    }

    public void SendPlan(PlanRecord plan) => Demand(new SendPlan(plan), new PlanAnswer());

    public void SetClock(DateTimeOffset now) => Demand(new SetClock { UtcSeconds = (uint)now.ToUnixTimeSeconds() }, new ClockAnswer());

    /// <summary>
    /// Asks once for a range and hands over each piece that arrives, in any order, until the logger says that it has sent all or
    /// nothing of the range comes any more. What did not arrive is to be asked for again.
    /// </summary>
    public void FetchOnce(uint session, ByteRange range, int payloadLength, Action<Data> take)
    {
        Data data = new();
        FetchEnd end = new();
        Refusal refusal = new();
        Send(new Fetch
        {
            SessionNumber = session,
            Offset = (uint)range.Start,
            Length = (uint)range.Length,
            PayloadLength = (ushort)payloadLength,
        });

        // Each byte of the range is due once; a logger that repeats itself for ever does not get more time for it.
        long due = range.Length;
        Deadline deadline = new(timing.Silence);
        while (NextFrame(deadline, out MessageCode code))
        {
            if (code == MessageCode.Data && data.TryRead(decoder.Content) && IsOf(data, session, range))
            {
                take(data);
                due -= data.Length;
                deadline = due > 0 ? new Deadline(timing.Silence) : deadline;
            }
            else if (code == MessageCode.FetchEnd && end.TryRead(decoder.Content) && end.SessionNumber == session && end.Offset == range.Start)
            {
                return;
            }
            else if (code == MessageCode.Refusal && refusal.TryRead(decoder.Content) && refusal.Request == MessageCode.Fetch)
            {
                throw LinkErrors.Refused(Port, MessageCode.Fetch, refusal.Reason);
            }
        }
    }

    private static bool IsOf(Data data, uint session, ByteRange range) =>
        data.SessionNumber == session && data.Length > 0 && data.Offset >= range.Start && data.Offset + (long)data.Length <= range.End;

    private void Demand(IMessage request, IMessage answer, Func<bool>? isMine = null)
    {
        if (Ask(request, answer, isMine ?? (() => true), timing.Answer) is RefusalReason reason)
        {
            throw LinkErrors.Refused(Port, request.Code, reason);
        }
    }

    /// <summary>Fills the answer, or returns why the logger refuses; asks again when no answer comes in time.</summary>
    private RefusalReason? Ask(IMessage request, IMessage answer, Func<bool> isMine, TimeSpan limit)
    {
        Refusal refusal = new();
        int framesBefore = decoder.Frames;
        long heardBefore = bytesHeard;
        for (int attempt = 0; attempt < timing.Attempts; attempt++)
        {
            Send(request);
            Deadline deadline = new(limit);
            while (NextFrame(deadline, out MessageCode code))
            {
                if (code == answer.Code && answer.TryRead(decoder.Content) && isMine())
                {
                    return null;
                }

                if (code == MessageCode.Refusal && refusal.TryRead(decoder.Content) && refusal.Request == request.Code)
                {
                    return refusal.Reason;
                }
            }
        }

        throw bytesHeard == heardBefore ? LinkErrors.Silent(Port, limit * timing.Attempts)
            : decoder.Frames == framesBefore ? LinkErrors.Noise(Port, bytesHeard - heardBefore)
            : LinkErrors.NoAnswer(Port, request.Code);
    }

    private void Send(IMessage message) => line.Write(encoder.Frame, encoder.Encode(message));

    /// <summary>True with the code of the next sound frame, its fields to be read from the decoder; false when the time is over.</summary>
    private bool NextFrame(Deadline deadline, out MessageCode code)
    {
        do
        {
            while (incomingRead < incomingCount)
            {
                if (decoder.Accept(incoming[incomingRead++]))
                {
                    code = (MessageCode)decoder.Content.ReadByte();
                    return true;
                }
            }

            incomingRead = 0;
            incomingCount = line.Read(incoming, deadline.Left);
            bytesHeard += incomingCount;
        }
        while (!deadline.IsOver);
        code = MessageCode.None;
        return false;
    }
}
