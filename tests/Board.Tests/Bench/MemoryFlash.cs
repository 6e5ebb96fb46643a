using System;
using LoggerBox.BoardParts.Settings;

namespace LoggerBox.Board.Tests.Bench;

/// <summary>A place in flash that can be cut while it is written, and that can rot.</summary>
public sealed class MemoryFlash : IFlashCopy
{
    public byte[] Bytes { get; set; } = [];

    /// <summary>The next write gets so far, then power is gone.</summary>
    public int CutAfterBytes { get; set; } = -1;

    public int Writes { get; private set; }

    public int Read(byte[] buffer)
    {
        Bytes.CopyTo(buffer, 0);
        return Bytes.Length;
    }

    public bool Write(byte[] buffer, int count)
    {
        Writes++;
        bool isCut = CutAfterBytes >= 0;
        Bytes = buffer.AsSpan(0, isCut ? Math.Min(count, CutAfterBytes) : count).ToArray();
        CutAfterBytes = -1;
        return !isCut;
    }
}
