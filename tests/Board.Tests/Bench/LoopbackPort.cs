using System;
using System.Collections.Generic;
using LoggerBox.Capture.Link;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Board.Tests.Bench;

/// <summary>The cable's other end in memory.</summary>
public sealed class LoopbackPort : ISerialPort
{
    private readonly FrameEncoder encoder = new();
    private readonly FrameDecoder decoder = new();
    private readonly Queue<byte> toLogger = new();

    /// <summary>Refusals that came, in order.</summary>
    public List<RefusalReason> Refusals { get; } = [];

    public List<MessageCode> Answers { get; } = [];

    public void Send(IMessage request)
    {
        int length = encoder.Encode(request);
        toLogger.Enqueue(FrameFormat.Delimiter);
        for (int i = 0; i < length; i++)
        {
            toLogger.Enqueue(encoder.Frame[i]);
        }
    }

    public void SendBytes(ReadOnlySpan<byte> bytes)
    {
        foreach (byte value in bytes)
        {
            toLogger.Enqueue(value);
        }
    }

    public int Read(byte[] buffer, int offset, int count)
    {
        int read = 0;
        while (read < count && toLogger.TryDequeue(out byte value))
        {
            buffer[offset + read++] = value;
        }

        return read;
    }

    public int Write(byte[] buffer, int offset, int count)
    {
        for (int i = 0; i < count; i++)
        {
            if (decoder.Accept(buffer[offset + i]))
            {
                Hear(decoder.Content);
            }
        }

        return count;
    }

    private void Hear(ByteReader content)
    {
        MessageCode code = (MessageCode)content.ReadByte();
        Answers.Add(code);
        Refusal refusal = new();
        if (code == MessageCode.Refusal && refusal.TryRead(content))
        {
            Refusals.Add(refusal.Reason);
        }
    }
}
