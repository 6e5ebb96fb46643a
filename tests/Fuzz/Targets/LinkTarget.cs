using System;
using System.Buffers.Binary;
using System.Collections.Generic;
using LoggerBox.Capture.Link;
using LoggerBox.Capture.Storage;
using LoggerBox.Capture.Tests.Link;
using LoggerBox.Fuzz.Mutations;
using LoggerBox.Host.Tests.Sessions;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Tests;

namespace LoggerBox.Fuzz.Targets;

/// <summary>Below a frame's CRC: every message with its body changed, read and written again; the logger gets it too, and goes on answering.</summary>
internal sealed class LinkTarget : FuzzTarget
{
    // Enough for the logger to send all of its small session, whatever it was asked for.
    private const int Steps = 200;

    private readonly FrameEncoder encoder = new();
    private readonly FrameDecoder decoder = new();

    public override string? Try(Random random)
    {
        List<IMessage> messages = [.. Examples.Messages()];
        int index = random.Next(messages.Count);
        byte[] content = Content(messages[index]);
        byte[] changed = [(byte)messages[index].Code, .. ByteMutation.Of(content[1..], random)];
        return Differs(messages[index], changed) ?? Asked(changed);
    }

    private string? Differs(IMessage message, byte[] content)
    {
        ByteReader reader = new(content) { Position = 1 };
        if (!message.TryRead(reader))
        {
            return null;
        }

        string before = Examples.Text(message);
        if (!message.TryRead(new ByteReader(Content(message)) { Position = 1 }))
        {
            return $"a {message.Code} that was taken is not taken again:\n{before}";
        }

        if (before.Contains('\uFFFD', StringComparison.Ordinal))
        {
            before = Examples.Text(message);
            message.TryRead(new ByteReader(Content(message)) { Position = 1 });
        }

        string after = Examples.Text(message);
        return before == after ? null : $"written again it reads otherwise:\n{before}\n{after}";
    }

    private static string? Asked(byte[] content)
    {
        if (content.Length > FrameFormat.MaxContent)
        {
            return null;
        }

        RecordLog log = new(new MemoryStore(1 << 16));
        log.Open();
        log.BeginSession(RecordedBytes.Header(0));
        RecordedBytes.WriteSamples(record => log.Append(record), new Random(1), 200);
        log.EndSession(new SessionEnd());
        Cable cable = new();
        LinkAnswers logger = new(log, cable, RecordedBytes.LoggerId, RecordedBytes.BootCount);
        cable.ToLogger.AddRange(Frame(content));
        for (int step = 0; step < Steps; step++)
        {
            logger.Step(step * 1000, 0);
        }

        cable.Receive();
        cable.Send(new Hello());
        for (int step = 0; step < Steps; step++)
        {
            logger.Step((Steps + step) * 1000, 0);
        }

        return cable.Receive().Exists(answer => answer.Code == MessageCode.HelloAnswer) ? null : "after it the logger does not answer";
    }

    private byte[] Content(IMessage message)
    {
        int length = encoder.Encode(message);
        foreach (byte one in encoder.Frame.AsSpan(0, length))
        {
            decoder.Accept(one);
        }

        byte[] content = new byte[decoder.Content.Remaining];
        decoder.Content.ReadBytes(content, 0, content.Length);
        return content;
    }

    private static byte[] Frame(byte[] content)
    {
        byte[] whole = new byte[content.Length + FrameFormat.CrcLength];
        content.CopyTo(whole, 0);
        BinaryPrimitives.WriteUInt32LittleEndian(whole.AsSpan(content.Length), Crc32.Of(content, 0, content.Length));
        byte[] frame = new byte[FrameFormat.MaxFrame + 1];
        int length = Cobs.Encode(whole, 0, whole.Length, frame, 0, FrameFormat.Delimiter);
        frame[length] = FrameFormat.Delimiter;
        return frame[..(length + 1)];
    }
}
