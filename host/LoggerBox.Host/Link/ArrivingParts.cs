using System;
using LoggerBox.Host.Archive;

namespace LoggerBox.Host.Link;

/// <summary>
/// Gathers what arrives of a session into parts worth a write to the disk. Disposing stores what is gathered, so that a cut line
/// costs only the frame that it hit.
/// </summary>
internal sealed class ArrivingParts : IDisposable
{
    // A part a second or so at 115200 baud: what a killed program can lose.
    private const int PartLength = 16 * 1024;

    private readonly ArchiveFile archive;
    private readonly string sessionId;
    private readonly byte[] part = new byte[PartLength];
    private long start;
    private int length;

    public ArrivingParts(ArchiveFile archive, string sessionId)
    {
        this.archive = archive;
        this.sessionId = sessionId;
    }

    public void Add(long offset, ReadOnlySpan<byte> bytes)
    {
        if (offset != start + length || length + bytes.Length > PartLength)
        {
            Store();
            start = offset;
        }

        bytes.CopyTo(part.AsSpan(length));
        length += bytes.Length;
    }

    public void Dispose() => Store();

    private void Store()
    {
        if (length > 0)
        {
            archive.Incoming.StorePart(sessionId, start, part[..length]);
            length = 0;
        }
    }
}
