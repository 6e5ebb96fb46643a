using System;
using LoggerBox.Protocol.Framing;

namespace LoggerBox.Fuzz.Targets;

/// <summary>Raw bytes, above the CRC: no frame may come of noise, none may be longer than the format allows.</summary>
public static class FrameTarget
{
    public static string? Try(Random random)
    {
        byte[] wire = new byte[random.Next(3000)];
        random.NextBytes(wire);
        for (int i = random.Next(20); i > 0 && wire.Length > 0; i--)
        {
            wire[random.Next(wire.Length)] = FrameFormat.Delimiter;
        }

        FrameDecoder decoder = new();
        foreach (byte one in wire)
        {
            if (decoder.Accept(one))
            {
                return $"a frame of {decoder.Content.Remaining} bytes out of noise";
            }
        }

        return decoder.DamagedBytes <= wire.Length ? null : "more bytes damaged than came";
    }
}
