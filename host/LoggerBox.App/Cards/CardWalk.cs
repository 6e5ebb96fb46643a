using System.Collections.Generic;
using LoggerBox.Capture.Storage;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;

namespace LoggerBox.App.Cards;

/// <summary>
/// Goes through the card's pages once, from first to last, and keeps what the log itself needs not know: which bytes of a session stand in
/// no readable page, and which sessions are of a later version.
/// </summary>
internal sealed class CardWalk
{
    // Behind so many pages that are no log's nothing of a log follows; one lost write hides eight.
    private const int PagesWithoutLog = 64;

    private readonly IRecordStore card;
    private readonly PageHeader header = new();
    private readonly byte[] page;
    private readonly Dictionary<(uint Number, int Start), ByteRanges> readable = [];

    /// <param name="lastPage">The last page that the log has; the walk goes on behind it as long as there is something.</param>
    public CardWalk(IRecordStore card, int lastPage)
    {
        this.card = card;
        page = new byte[card.PageLength];
        int withoutLog = 0;
        for (int at = 0; (at <= lastPage || withoutLog < PagesWithoutLog) && (long)at * card.PageLength < card.Length; at++)
        {
            withoutLog = IsLog(at) ? 0 : withoutLog + 1;
        }
    }

    /// <summary>Record version of each session that begins with a later one than this program knows.</summary>
    public SortedDictionary<uint, int> LaterVersions { get; } = [];

    /// <summary>What of a session stands in no readable page, in order: the log gives zeros there.</summary>
    public IReadOnlyList<ByteRange> Gaps(LoggedSession session) =>
        (readable.GetValueOrDefault((session.Number, session.StartPage)) ?? new ByteRanges()).HolesIn(new ByteRange(0, session.Length));

    private bool IsLog(int at)
    {
        int read = card.Read((long)at * page.Length, page, 0, page.Length);
        bool isLog = read == page.Length && header.TryRead(page, 0, at) && header.CanStand(at, page.Length);
        if (isLog && header.Kind == PageKind.Session)
        {
            Take();
        }

        return isLog;
    }

    private void Take()
    {
        (uint, int) key = (header.SessionNumber, header.SessionStart);
        if (!readable.TryGetValue(key, out ByteRanges? ranges))
        {
            readable[key] = ranges = new ByteRanges();
        }

        ranges.Add(new ByteRange(header.SessionOffset, (long)header.SessionOffset + header.Used));
        bool beginsWithRecord = page[PageHeader.Length] == RecordFormat.FirstMark && page[PageHeader.Length + 1] == RecordFormat.SecondMark;
        int version = page[PageHeader.Length + 3];
        if (header.SessionOffset == 0 && beginsWithRecord && version > RecordFormat.Version)
        {
            LaterVersions[header.SessionNumber] = version;
        }
    }
}
