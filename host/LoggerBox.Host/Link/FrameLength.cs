using System;
using LoggerBox.Protocol.Link;

namespace LoggerBox.Host.Link;

/// <summary>
/// How many bytes of a session one frame should carry, from the frames that got lost so far. With errors that hit a byte with the
/// chance p, a payload of L bytes in a frame of L + h comes through best where L = sqrt(h / p).
/// </summary>
internal sealed class FrameLength
{
    /// <summary>What a Data frame adds to its payload: code, session, offset, CRC, stuffing, delimiter.</summary>
    private const int Overhead = 13;

    private const int Shortest = 32;

    /// <summary>Bytes after which half of what was seen is forgotten: a plug that was moved, a radio that was switched off.</summary>
    private const double Memory = 65_536;

    // Worth a quarter of a frame: begin with 256 bytes, and believe the line after the first few frames.
    private double bytes = 200;
    private double losses = 0.05;

    public int Payload => (int)Math.Clamp(Math.Sqrt(Overhead * bytes / losses), Shortest, Data.MaxPayload);

    public void Came(int payload) => Count(payload, 0);

    public void Lost(int payload) => Count(payload, 1);

    private void Count(int payload, int lost)
    {
        int frame = payload + Overhead;
        double kept = Math.Pow(0.5, frame / Memory);
        bytes = (bytes * kept) + frame;
        losses = (losses * kept) + lost;
    }
}
