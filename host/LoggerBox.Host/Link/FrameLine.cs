using System;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Link;

/// <summary>Messages over a line. It learns how long this line takes to answer, and so how long a silence is one.</summary>
internal sealed class FrameLine
{
    private readonly HostLine line;
    private readonly TimeProvider clock;
    private readonly RepeatInterval repeat = new();
    private readonly FrameEncoder encoder = new();
    private readonly FrameDecoder decoder = new();
    private readonly byte[] incoming = new byte[4096];
    private int incomingCount;
    private int incomingRead;
    private byte lastTag;

    public FrameLine(HostLine line, TimeProvider clock)
    {
        this.line = line;
        this.clock = clock;
    }

    public string Port => line.Port;

    public long BytesHeard { get; private set; }

    public int FramesHeard => decoder.Frames;

    /// <summary>Fields of the frame that came last.</summary>
    public ByteReader Content => decoder.Content;

    /// <summary>For the next request for a range.</summary>
    public byte NextTag() => ++lastTag;

    public Deadline After(TimeSpan limit) => new(clock, limit);

    public void Send(IMessage message) => line.Write(encoder.Frame, encoder.Encode(message));

    /// <summary>An answer came, so long after the first request for it.</summary>
    public void Answered(TimeSpan roundTrip) => repeat.Answered(roundTrip);

    /// <summary>
    /// True with the code of the next sound frame, its fields to be read from the content. False when the time is over, or when the
    /// line has been silent for so long that asking again is due.
    /// </summary>
    /// <param name="damageEndsIt">False, too, as soon as a frame came that was damaged: it may have been the answer.</param>
    public bool Next(Deadline deadline, out MessageCode code, bool damageEndsIt = false)
    {
        int damagedBefore = decoder.DamagedFrames;
        while (!deadline.IsOver)
        {
            while (incomingRead < incomingCount)
            {
                incomingRead = decoder.Accept(incoming, incomingRead, incomingCount);
                if (decoder.IsComplete)
                {
                    repeat.Reset();
                    code = (MessageCode)decoder.Content.ReadByte();
                    return true;
                }
            }

            if (damageEndsIt && decoder.DamagedFrames != damagedBefore)
            {
                break;
            }

            incomingRead = 0;
            incomingCount = line.Read(incoming, deadline.Left < repeat.Current ? deadline.Left : repeat.Current);
            BytesHeard += incomingCount;
            if (incomingCount == 0)
            {
                repeat.Unanswered();
                break;
            }
        }

        code = MessageCode.None;
        return false;
    }
}
