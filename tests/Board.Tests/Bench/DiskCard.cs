using System;
using System.IO;
using LoggerBox.BoardParts.Card;

namespace LoggerBox.Board.Tests.Bench;

/// <summary>A card that is a file of this computer, and can be pulled: in the middle of a write, too.</summary>
public sealed class DiskCard : ICardFile, IDisposable
{
    private readonly string path = Path.Combine(Path.GetTempPath(), "loggerbox-card-" + Guid.NewGuid().ToString("N"));
    private FileStream? file;

    public DiskCard(long length)
    {
        using FileStream made = File.Create(path);
        made.SetLength(length);
    }

    public bool IsPulled { get; set; }

    /// <summary>The next write gets so far, then the card is gone.</summary>
    public int PullAfterBytes { get; set; } = -1;

    public bool IsBeingMade => false;

    public long Open()
    {
        Close();
        if (IsPulled)
        {
            return 0;
        }

        file = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite, bufferSize: 0);
        return file.Length;
    }

    public int Read(long offset, byte[] buffer, int bufferOffset, int count)
    {
        if (IsPulled || file == null)
        {
            return 0;
        }

        file.Position = offset;
        return file.ReadAtLeast(buffer.AsSpan(bufferOffset, count), count, throwOnEndOfStream: false);
    }

    public bool Write(long offset, byte[] buffer, int bufferOffset, int count)
    {
        if (IsPulled || file == null)
        {
            return false;
        }

        int written = PullAfterBytes < 0 ? count : Math.Min(count, PullAfterBytes);
        file.Position = offset;
        file.Write(buffer, bufferOffset, written);
        IsPulled = PullAfterBytes >= 0;
        PullAfterBytes = -1;
        return !IsPulled;
    }

    public void Close()
    {
        file?.Dispose();
        file = null;
    }

    public void Dispose()
    {
        Close();
        File.Delete(path);
    }
}
