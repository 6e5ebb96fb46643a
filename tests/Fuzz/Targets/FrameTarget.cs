using System;
using System.Collections.Generic;
using LoggerBox.Fuzz.Mutations;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Tests;

namespace LoggerBox.Fuzz.Targets;

/// <summary>Above the CRC: no frame comes of noise, and of frames that were damaged on the line only those that were sent.</summary>
internal sealed class FrameTarget : FuzzTarget
{
    private static readonly List<IMessage> Messages = [.. Examples.Messages()];

    private readonly HashSet<string> sent = [];

    public override string? Try(Random random)
    {
        sent.Clear();
        byte[] wire = random.Next(2) == 0 ? Noise(random) : ByteMutation.Of(Stream(random), random, most: 8);
        FrameDecoder decoder = new();
        foreach (byte one in wire)
        {
            if (!decoder.Accept(one))
            {
                continue;
            }

            byte[] content = new byte[decoder.Content.Remaining];
            decoder.Content.ReadBytes(content, 0, content.Length);
            if (!sent.Contains(Convert.ToHexString(content)))
            {
                return $"a frame of {content.Length} bytes that nobody sent";
            }
        }

        return decoder.DamagedBytes <= wire.Length ? null : "more bytes damaged than came";
    }

    private static byte[] Noise(Random random)
    {
        byte[] wire = ByteMutation.Noise(random, 3000);
        for (int i = random.Next(20); i > 0 && wire.Length > 0; i--)
        {
            wire[random.Next(wire.Length)] = FrameFormat.Delimiter;
        }

        return wire;
    }

    private byte[] Stream(Random random)
    {
        List<byte> wire = [];
        FrameEncoder encoder = new();
        FrameDecoder decoder = new();
        for (int i = random.Next(1, 6); i > 0; i--)
        {
            int length = encoder.Encode(Messages[random.Next(Messages.Count)]);
            wire.AddRange(encoder.Frame.AsSpan(0, length));
            foreach (byte one in encoder.Frame.AsSpan(0, length))
            {
                decoder.Accept(one);
            }

            byte[] content = new byte[decoder.Content.Remaining];
            decoder.Content.ReadBytes(content, 0, content.Length);
            sent.Add(Convert.ToHexString(content));
        }

        return [.. wire];
    }
}
