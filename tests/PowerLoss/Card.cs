using System;
using System.Collections.Generic;
using LoggerBox.Capture.Storage;

namespace LoggerBox.PowerLoss;

/// <summary>A simulated card: an image that faults are put into, and a list of what was written to it.</summary>
public sealed class Card : IRecordStore
{
    public const int Page = 512;

    /// <summary>Bytes that flash programs at once.</summary>
    public const int Unit = 32;

    // On average over the card: for its age, for the log's end, for its session, for a note.
    private const int MostReadsOfPage = 3;

    private int readsLeft = int.MaxValue;
    private byte[] flicker = [];
    private int flickerOffset;
    private bool flickered;

    public Card(int pages)
    {
        Image = new byte[pages * Page];
        Array.Fill(Image, (byte)0xFF);
    }

    public byte[] Image { get; }

    /// <summary>What was written since this list was cleared.</summary>
    public List<CardWrite> Writes { get; } = [];

    public int PageLength => Page;

    public long Capacity => Image.Length;

    // The card cannot tell where it was never written.
    public long Length => Image.Length;

    /// <summary>Bytes of half-programmed cells: every other read of them gives these instead of the image's.</summary>
    public void Flicker(int offset, byte[] other)
    {
        flickerOffset = offset;
        flicker = other;
        flickered = false;
    }

    /// <summary>Opens the log, with no more reads than one bounded pass may take.</summary>
    public void Recover(RecordLog log)
    {
        readsLeft = MostReadsOfPage * Image.Length / Page;
        log.Open();
        readsLeft = int.MaxValue;
    }

    public int Read(long offset, byte[] buffer, int bufferOffset, int count)
    {
        if (readsLeft-- == 0)
        {
            throw new InvalidOperationException("Recovery reads more often than its bound allows.");
        }

        int from = (int)offset;
        int readable = Math.Min(count, Image.Length - from);
        Image.AsSpan(from, readable).CopyTo(buffer.AsSpan(bufferOffset));
        if (flicker.Length > 0)
        {
            MixIn(from, buffer.AsSpan(bufferOffset, readable));
        }

        return readable;
    }

    public bool Write(long offset, byte[] buffer, int bufferOffset, int count)
    {
        int at = (int)offset;
        Span<byte> place = Image.AsSpan(at, count);
        ReadOnlySpan<byte> bytes = buffer.AsSpan(bufferOffset, count);
        Writes.Add(new CardWrite(at, place.ToArray(), bytes.ToArray()));
        bytes.CopyTo(place);
        bool overFlicker = at < flickerOffset + flicker.Length && flickerOffset < at + count;
        flicker = overFlicker ? [] : flicker;
        return true;
    }

    private void MixIn(int from, Span<byte> read)
    {
        int start = Math.Max(from, flickerOffset);
        int end = Math.Min(from + read.Length, flickerOffset + flicker.Length);
        if (start < end)
        {
            flickered = !flickered;
            if (flickered)
            {
                flicker.AsSpan(start - flickerOffset, end - start).CopyTo(read[(start - from)..]);
            }
        }
    }
}

/// <summary>One write: where, what was there, what was to be there.</summary>
public sealed record CardWrite(int Offset, byte[] Old, byte[] New);
