using System;
using System.Collections.Generic;
using LoggerBox.Capture.Link;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Tests.Link;

/// <summary>Both directions of a cable in memory; the host's end speaks messages, as a host would hear them.</summary>
public sealed class Cable : ISerialPort
{
    private readonly FrameDecoder decoder = new();
    private readonly FrameEncoder encoder = new();
    private readonly List<byte> toHost = [];

    public List<byte> ToLogger { get; } = [];

    public int BytesTakenAtOnce { get; set; } = int.MaxValue;

    public int Read(byte[] buffer, int offset, int count)
    {
        int read = Math.Min(count, ToLogger.Count);
        ToLogger.CopyTo(0, buffer, offset, read);
        ToLogger.RemoveRange(0, read);
        return read;
    }

    public int Write(byte[] buffer, int offset, int count)
    {
        int taken = Math.Min(count, BytesTakenAtOnce);
        toHost.AddRange(buffer.AsSpan(offset, taken));
        return taken;
    }

    public void Send(IMessage request)
    {
        int length = encoder.Encode(request);
        ToLogger.Add(FrameFormat.Delimiter);
        ToLogger.AddRange(encoder.Frame.AsSpan(0, length));
    }

    public List<IMessage> Receive()
    {
        List<IMessage> messages = [];
        foreach (byte value in toHost)
        {
            if (decoder.Accept(value))
            {
                messages.Add(Read(decoder.Content));
            }
        }

        toHost.Clear();
        return messages;
    }

    private static IMessage Read(ByteReader content)
    {
        MessageCode code = (MessageCode)content.ReadByte();
        IMessage message = code switch
        {
            MessageCode.HelloAnswer => new HelloAnswer(),
            MessageCode.SessionList => new SessionList(),
            MessageCode.Data => new Data(),
            MessageCode.FetchEnd => new FetchEnd(),
            MessageCode.Confirmed => new Confirmed(),
            MessageCode.PlanAnswer => new PlanAnswer(),
            MessageCode.ClockAnswer => new ClockAnswer(),
            MessageCode.LiveReadings => new LiveReadings(),
            MessageCode.CalibrationAnswer => new CalibrationAnswer(),
            MessageCode.Refusal => new Refusal(),
            _ => throw new NotSupportedException("The logger does not say " + code),
        };
        return message.TryRead(content) ? message : throw new NotSupportedException("Not readable: " + code);
    }
}
