using System;
using System.Collections.Generic;
using LoggerBox.Capture.Storage;
using LoggerBox.Fuzz.Mutations;
using LoggerBox.Host.Tests.Sessions;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Fuzz.Targets;

/// <summary>A card with sessions, damaged: raw, in whole pages, or in a page header whose CRC is made again. No record comes of it that was not written.</summary>
internal sealed class CardTarget : FuzzTarget
{
    private const int Capacity = 1 << 18;
    private const int PageLength = 512;

    private readonly byte[] image;
    private readonly HashSet<string> onTheCard = [];
    private HashSet<string> written = [];

    public CardTarget()
    {
        MemoryStore store = new(Capacity);
        RecordLog log = new(store);
        log.Open();
        for (int session = 0; session < 4; session++)
        {
            Record(log, session);
            Keep(log);
            log.Confirm(log.Sessions.Last!, 1);
        }

        image = new byte[store.Length];
        store.Read(0, image, 0, image.Length);
        KeepNotes();
        onTheCard.UnionWith(written);
    }

    public override string? Try(Random random)
    {
        written = [.. onTheCard];
        byte[] damaged = [.. image];
        for (int change = random.Next(1, 4); change > 0; change--)
        {
            Damage(damaged, random);
        }

        MemoryStore store = new(Capacity);
        store.Write(0, damaged, 0, random.Next(4) == 0 ? random.Next(damaged.Length / PageLength) * PageLength : damaged.Length);
        RecordLog log = new(store);
        log.Open();
        string? wrong = Unwritten(log);
        if (wrong is null && Record(log, random.Next(100, 200)))
        {
            Keep(log);
            RecordLog reopened = new(store);
            reopened.Open();
            wrong = Unwritten(reopened);
        }

        return wrong;
    }

    private static void Damage(byte[] card, Random random)
    {
        int pages = card.Length / PageLength;
        int page = random.Next(pages);
        Span<byte> bytes = card.AsSpan(page * PageLength, PageLength);
        PageHeader header = new();
        switch (random.Next(5))
        {
            case 0:
                ByteMutation.InPlace(bytes, random);
                break;
            case 1:
                bytes.Fill((byte)(random.Next(2) * 0xFF));
                break;
            case 2:
                card.AsSpan(random.Next(pages) * PageLength, PageLength).CopyTo(bytes);
                break;
            case 3:
                random.NextBytes(bytes[random.Next(PageLength)..]);
                break;
            default:
                if (header.TryRead(card, page * PageLength, page))
                {
                    Change(header, random);
                    header.Write(card, page * PageLength, page);
                }

                break;
        }
    }

    private static void Change(PageHeader header, Random random)
    {
        uint value = random.Next(2) == 0 ? (uint)random.Next(64) : uint.MaxValue >> random.Next(32);
        switch (random.Next(8))
        {
            case 0: header.Kind = (PageKind)(byte)value; break;
            case 1: header.IndexInBlock = (byte)value; break;
            case 2: header.Used = (ushort)value; break;
            case 3: header.Generation = value; break;
            case 4: header.SessionNumber = value; break;
            case 5: header.SessionStart = (int)value; break;
            case 6: header.SessionOffset = value; break;
            default: header.BootCount = (ushort)value; break;
        }
    }

    private string? Unwritten(RecordLog log)
    {
        for (int i = 0; i < log.Sessions.Count; i++)
        {
            LoggedSession session = log.Sessions[i];
            if (session.Length > Capacity)
            {
                return $"a session of {session.Length:N0} bytes on a card of {Capacity:N0}";
            }

            foreach (string record in Records(log, session))
            {
                if (!written.Contains(record))
                {
                    return "a record that was never written";
                }
            }
        }

        return null;
    }

    // A confirmation stands between sessions, and a changed header can make a session of it: it was written all the same.
    private void KeepNotes()
    {
        PageHeader header = new();
        for (int page = 0; page < image.Length / PageLength; page++)
        {
            int start = page * PageLength;
            if (header.TryRead(image, start, page) && header.Kind == PageKind.Note)
            {
                written.UnionWith(Records(image[(start + PageHeader.Length)..(start + PageHeader.Length + header.Used)]));
            }
        }
    }

    private void Keep(RecordLog log) => written.UnionWith(Records(log, log.Sessions.Last!));

    private static IEnumerable<string> Records(RecordLog log, LoggedSession session)
    {
        byte[] bytes = new byte[session.Length];
        log.Read(session, 0, bytes, 0, bytes.Length);
        return Records(bytes);
    }

    private static IEnumerable<string> Records(byte[] bytes)
    {
        RecordScan scan = new(bytes, 0, bytes.Length);
        while (scan.MoveNext())
        {
            yield return Convert.ToHexString(bytes, scan.Envelope.BodyOffset - RecordFormat.HeaderLength, scan.Envelope.RecordLength);
        }
    }

    private static bool Record(RecordLog log, int seed)
    {
        bool begun = log.BeginSession(RecordedBytes.Header(0));
        if (begun)
        {
            RecordedBytes.WriteSamples(record => log.Append(record), new Random(seed), 100 + (seed * 7 % 300));
            log.EndSession(new SessionEnd());
        }

        return begun;
    }
}
