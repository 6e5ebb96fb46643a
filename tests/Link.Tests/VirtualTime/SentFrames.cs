using System;
using System.Collections.Generic;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;

namespace LoggerBox.Link.Tests.VirtualTime;

/// <summary>A Data frame that the logger put on the wire: which bytes of the wire it took, and of the session it carried.</summary>
internal readonly record struct SentFrame(long Start, long End, ByteRange Payload);

/// <summary>Listens at the logger's plug, before anything is lost.</summary>
internal sealed class SentFrames
{
    private readonly FrameDecoder decoder = new();
    private readonly Data data = new();
    private long position;
    private long start;

    public List<SentFrame> All { get; } = [];

    public void Hear(ReadOnlySpan<byte> bytes)
    {
        foreach (byte value in bytes)
        {
            position++;
            if (decoder.Accept(value) && (MessageCode)decoder.Content.ReadByte() == MessageCode.Data && data.TryRead(decoder.Content))
            {
                All.Add(new SentFrame(start, position, new ByteRange(data.Offset, data.Offset + data.Length)));
            }

            start = value == FrameFormat.Delimiter ? position : start;
        }
    }
}
