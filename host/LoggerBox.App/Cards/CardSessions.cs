using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture.Storage;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;

namespace LoggerBox.App.Cards;

/// <summary>The sessions of a card, found and read by the logger's own log.</summary>
internal sealed class CardSessions : ISessionSource
{
    private const int PieceLength = 64 * 1024;

    private readonly CardFile card;
    private readonly RecordLog log;
    private readonly CardWalk walk;
    private readonly byte[] piece = new byte[PieceLength];

    public CardSessions(CardFile card)
    {
        this.card = card;
        log = new RecordLog(card);
        log.Open();
        walk = new CardWalk(card, log.Sessions.Last?.LastPage ?? 0);
    }

    public string Name => card.Folder;

    /// <summary>Oldest first.</summary>
    public IEnumerable<LoggedSession> All => Enumerable.Range(0, log.Sessions.Count).Select(index => log.Sessions[index]);

    /// <summary>Sessions that this program cannot read, with the version of their records.</summary>
    public IReadOnlyDictionary<uint, int> Later => walk.LaterVersions.Where(one => log.Sessions.Find(one.Key) is null).ToDictionary();

    public int UnreadablePages => log.UnreadablePages;

    /// <summary>Its last page was there when the log was opened, and is no more: the card was pulled, and how long the session is cannot be told.</summary>
    public bool IsGone(LoggedSession session) => card.HasFailed(session.LastPage);

    public UserErrorException Pulled(LoggedSession session) => new(Messages.CardPulled(card.Folder, session.Number, card.Reason));

    /// <summary>What the card has of a session no more, in order; its place and length are known, its bytes are zeros.</summary>
    public IReadOnlyList<ByteRange> Gaps(LoggedSession session) => walk.Gaps(session);

    /// <summary>Whose session it is, by its header. Null where that is lost.</summary>
    public uint? LoggerOf(LoggedSession session)
    {
        int count = log.Read(session, 0, piece, 0, RecordFormat.MaxRecord);
        RecordScan scan = new(piece, 0, count);
        SessionHeader header = new();
        return scan.MoveNext() && scan.TryReadBody(header) ? header.LoggerId : null;
    }

    public void Read(uint session, IReadOnlyList<ByteRange> wanted, Action<long, ReadOnlySpan<byte>> take)
    {
        foreach (ByteRange part in wanted)
        {
            InPieces(Find(session), part, take);
        }
    }

    /// <summary>Byte for byte, but for what the card itself has no more: what came by cable may be the better copy.</summary>
    public Agreement Compare(ArchivedSession row, Func<byte[]> content)
    {
        LoggedSession logged = Find(row.Identity.SessionNumber);
        byte[] archived = content();
        bool agrees = archived.Length == logged.Length;
        foreach (ByteRange part in agrees ? Ranges(Gaps(logged)).HolesIn(new ByteRange(0, logged.Length)) : [])
        {
            InPieces(logged, part, (offset, bytes) => agrees &= bytes.SequenceEqual(archived.AsSpan((int)offset, bytes.Length)));
        }

        return agrees ? Agreement.Same : Agreement.Other;
    }

    private void InPieces(LoggedSession session, ByteRange range, Action<long, ReadOnlySpan<byte>> take)
    {
        for (long at = range.Start; at < range.End; at += piece.Length)
        {
            int failures = card.Failures;
            int read = log.Read(session, (uint)at, piece, 0, (int)Math.Min(piece.Length, range.End - at));
            if (card.Failures > failures)
            {
                throw Pulled(session);
            }

            take(at, piece.AsSpan(0, read));
        }
    }

    private LoggedSession Find(uint session) => log.Sessions.Find(session)!;

    private static ByteRanges Ranges(IEnumerable<ByteRange> ranges)
    {
        ByteRanges all = new();
        foreach (ByteRange range in ranges)
        {
            all.Add(range);
        }

        return all;
    }
}
