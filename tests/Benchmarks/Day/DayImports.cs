using System;
using System.IO;
using LoggerBox.Host.Archive;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;

namespace LoggerBox.Benchmarks.Day;

/// <summary>Three ways from frames into an archive: a file of them at once, as a fetch stores them, and as it does where the line is slower than the disk.</summary>
internal sealed class DayImports(byte[] frames, int length)
{
    // What a fetch writes at the least.
    private const int PieceOfASlowLine = 16_841;

    /// <summary>All frames into memory, then one durable write.</summary>
    public void AtOnce(string path)
    {
        using ArchiveFile file = ArchiveFile.Open(path);
        byte[] session = new byte[length];
        Read((offset, bytes) => bytes.CopyTo(session.AsSpan((int)offset)));
        file.Sessions.Add(session, SessionOrigin.Fetched, "bench", DateTimeOffset.UtcNow);
    }

    /// <summary>Through what a fetch hands its pieces to: what comes while the disk writes is the next write.</summary>
    public void AsFetched(string path)
    {
        using ArchiveFile file = ArchiveFile.Open(path);
        using ArrivingParts parts = new(file, Begin(file));
        Read(parts.Add);
        parts.Complete();
    }

    /// <summary>A durable write each 17 KB, whatever it costs: the disk's time, spread over the hour that such a line needs.</summary>
    public void PieceByPiece(string path)
    {
        using ArchiveFile file = ArchiveFile.Open(path);
        string id = Begin(file);
        byte[] session = new byte[length];
        Read((offset, bytes) => bytes.CopyTo(session.AsSpan((int)offset)));
        for (int at = 0; at < length; at += PieceOfASlowLine)
        {
            file.Incoming.StorePart(id, at, session[at..Math.Min(length, at + PieceOfASlowLine)]);
        }

        file.Incoming.Complete(id);
    }

    public int Pieces => (length + PieceOfASlowLine - 1) / PieceOfASlowLine;

    private void Read(Taking take)
    {
        FrameDecoder decoder = new();
        Data data = new();
        int taken = 0;
        for (int at = 0; at < frames.Length;)
        {
            at = decoder.Accept(frames, at, frames.Length);
            if (decoder.IsComplete && decoder.Content.ReadByte() == (byte)MessageCode.Data && data.TryRead(decoder.Content))
            {
                take(data.Offset, data.Payload.AsSpan(0, data.Length));
                taken += data.Length;
            }
        }

        if (taken != length)
        {
            throw new InvalidDataException($"{taken} bytes of {length} came out of the frames.");
        }
    }

    private string Begin(ArchiveFile file) => file.Incoming.Begin(new SessionIdentity(1, 1, 1), length, SessionOrigin.Fetched, "bench", DateTimeOffset.UtcNow);

    private delegate void Taking(long offset, ReadOnlySpan<byte> bytes);
}
