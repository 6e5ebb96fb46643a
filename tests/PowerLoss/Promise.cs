using System;
using System.Collections.Generic;
using System.Runtime.InteropServices;
using LoggerBox.Protocol.Records;

namespace LoggerBox.PowerLoss;

/// <summary>
/// What must be, and what may be, found of one session: built from what was handed to the log and from what its calls answered, never from
/// what lies on the card.
/// </summary>
public sealed class Promise
{
    // Only ever added to, so copies of a promise share it.
    private readonly List<byte> given = [];
    private readonly List<int> boundaries = [0];

    public uint Number { get; init; }

    public ushort BootCount { get; init; }

    /// <summary>Bytes that a returned call has made safe, and bytes that may be there.</summary>
    public int Sure { get; set; }

    public int Possible { get; set; }

    public bool SureEnded { get; set; }

    public bool MayBeEnded { get; set; }

    public bool SureConfirmed { get; set; }

    public bool MayBeConfirmed { get; set; }

    /// <summary>The host has it and the log was begun again: whatever is left of it must only not be wrong.</summary>
    public bool Free { get; set; }

    /// <summary>Bytes that a fault after the fact may have cost: whole records, in order, apart from each other.</summary>
    public IReadOnlyList<LostRange> Lost { get; private set; } = [];

    public ReadOnlySpan<byte> Bytes => CollectionsMarshal.AsSpan(given);

    public void Give(byte[] record, int count)
    {
        given.AddRange(record.AsSpan(0, count));
        boundaries.Add(given.Count);
        Possible = given.Count;
    }

    public bool IsBoundary(int length) => boundaries.BinarySearch(length) >= 0;

    /// <summary>The same session with limits of its own.</summary>
    public Promise Copy() => (Promise)MemberwiseClone();

    /// <summary>Allows the loss of the records that these bytes belong to.</summary>
    public void MayLose(int from, int to)
    {
        if (to <= from)
        {
            return;
        }

        int first = boundaries.BinarySearch(from);
        int last = boundaries.BinarySearch(to);
        int start = boundaries[first < 0 ? ~first - 1 : first];
        int end = boundaries[Math.Min(last < 0 ? ~last : last, boundaries.Count - 1)];
        List<LostRange> lost = [];
        foreach (LostRange range in Lost)
        {
            if (range.To < start || range.From > end)
            {
                lost.Add(range);
                continue;
            }

            start = Math.Min(start, range.From);
            end = Math.Max(end, range.To);
        }

        lost.Add(new LostRange(start, end));
        lost.Sort((one, other) => one.From.CompareTo(other.From));
        Lost = lost;
    }

    /// <summary>The range that may be lost and has this byte; an empty one where there is none.</summary>
    public LostRange LostAt(int at)
    {
        foreach (LostRange range in Lost)
        {
            if (range.From <= at && at < range.To)
            {
                return range;
            }
        }

        return default;
    }

    /// <summary>Whether all from this byte to the other may be lost; nothing at all may always be.</summary>
    public bool MayMiss(int from, int to)
    {
        if (to == 0)
        {
            return true;
        }

        foreach (LostRange range in Lost)
        {
            if (range.From <= from && range.To >= to)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether the session's own reader would take this record.</summary>
    public bool Owns(Envelope envelope) => envelope.SessionNumber == Number && envelope.BootCount == BootCount;
}

/// <summary>Bytes of a session, the last not included.</summary>
public readonly record struct LostRange(int From, int To);
