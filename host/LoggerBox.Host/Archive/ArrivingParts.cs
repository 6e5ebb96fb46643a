using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Archive;

/// <summary>
/// Gathers what arrives of a session into parts worth a write to the disk, and writes them beside the line: a disk that takes its time
/// must not stop it. What comes while it writes is the next write: where a card or a quick line brings more than the disk takes one by one, a write
/// is worth more. Disposing stores what is gathered, so that a cut line costs only the frame that it hit.
/// </summary>
public sealed class ArrivingParts : IDisposable
{
    // A second or so at 115200 baud: what a killed program can lose, with what comes while the disk writes. As many as fill four pages, so that what
    // is over is little.
    private const int BytesBeforeAWrite = SessionParts.LocalBytes + (4 * SessionParts.OverflowBytes);

    // So much may wait for the disk, then the line does.
    private const int MostBytesWaiting = 64 * BytesBeforeAWrite;

    private readonly ArchiveFile archive;
    private readonly string sessionId;
    private readonly List<(long Start, byte[] Bytes)> pieces = [];
    private int gathered;

    // The archive is used by one thread at a time: this one waits for the write before it begins the next, and at the end.
    private Task writing = Task.CompletedTask;

    public ArrivingParts(ArchiveFile archive, string sessionId)
    {
        this.archive = archive;
        this.sessionId = sessionId;
    }

    public void Add(long offset, ReadOnlySpan<byte> bytes)
    {
        pieces.Add((offset, bytes.ToArray()));
        gathered += bytes.Length;
        if (gathered >= MostBytesWaiting || (gathered >= BytesBeforeAWrite && writing.IsCompleted))
        {
            Store();
        }
    }

    /// <summary>Stores the last of them and marks the session complete in one go: a write to the disk less while the logger waits.</summary>
    /// <exception cref="UserErrorException">Bytes are missing; what is here is stored when this is disposed.</exception>
    public ArchivedSession Complete()
    {
        writing.GetAwaiter().GetResult();
        ArchivedSession complete = archive.Incoming.Complete(sessionId, Stretches());
        pieces.Clear();
        gathered = 0;
        return complete;
    }

    public void Dispose()
    {
        Store();
        writing.GetAwaiter().GetResult();
    }

    private void Store()
    {
        if (gathered > 0)
        {
            // Emptied first: what the disk refuses once is not offered again while the line is being closed.
            (long Start, byte[] Bytes)[] whole = [.. Stretches()];
            pieces.Clear();
            gathered = 0;
            writing.GetAwaiter().GetResult();

            // A thread of its own: the pool's few are needed by the serial line.
            writing = Task.Factory.StartNew(
                () => archive.Incoming.StoreParts(sessionId, whole), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        }
    }

    /// <summary>Pieces that adjoin as one row: a row each would make a session of a bad line slow to read ever after.</summary>
    private IEnumerable<(long Start, byte[] Bytes)> Stretches()
    {
        ByteRanges stretches = new();
        pieces.ForEach(piece => stretches.Add(new ByteRange(piece.Start, piece.Start + piece.Bytes.Length)));
        foreach (ByteRange stretch in stretches.All)
        {
            byte[] bytes = new byte[stretch.Length];
            foreach ((long start, byte[] piece) in pieces.Where(piece => piece.Start >= stretch.Start && piece.Start < stretch.End))
            {
                piece.CopyTo(bytes, start - stretch.Start);
            }

            yield return (stretch.Start, bytes);
        }
    }
}
