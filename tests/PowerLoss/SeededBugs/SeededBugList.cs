using System.Collections.Generic;

namespace LoggerBox.PowerLoss.SeededBugs;

/// <summary>Bugs that break one promise each. Each must be found by the simulator.</summary>
public static class SeededBugList
{
    public static IReadOnlyList<SeededBug> All { get; } =
    [
        new("no CRC of the page header", 1, "PageHeader.cs", "return Get(buffer, offset + CrcOffset) == Crc32.Of(buffer, offset, CrcOffset);", "return true;"),
        new("no generation", 1, "CardPages.cs", "return state == PageState.Ours && Header.Generation != Generation ? PageState.Older : state;", "return state;"),
        new("no session number, no boot count", 1, "BlockReader.cs", "envelope.SessionNumber == number && envelope.BootCount == bootCount && ", ""),
        new("no sequence", 1, "RecordLog.cs", "nextSequence++;", ""),
        new("the end of a cut session is not looked at", 1, "BlockReader.cs", "EndOfRecords = at;", "EndOfRecords = Length;"),
        new("every session that is found counts as closed", 1, "BlockReader.cs", "HoldsEnd = envelope.Code == RecordCode.SessionEnd;", "HoldsEnd = true;"),
        new("numbers are given twice", 1, "RecordLog.cs", "header.SessionNumber = ++lastNumber;", "header.SessionNumber = (uint)Sessions.Count + 1;"),
        new("a place in a session is remembered over a restart", 1, "RecordLog.cs", "reading.Forget();\n            UnfinishedBytes", "UnfinishedBytes"),
        new("a header is remembered over a restart", 1, "RecordLog.cs", "pages.Forget();\n", "\n"),
        new("a header is remembered over a write", 2, "CardPages.cs", "Forget();\n            return store.Write", "return store.Write"),
        new("answers before the block is stored", 2, "RecordLog.Parts.cs", "inWork.Length) || (inWork.IsBlock && !TryStore());", "inWork.Length);"),
        new("says that it is closed before the end is stored", 2, "RecordLog.cs", "TryGather(end) && TryStore();", "TryGather(end);"),
        new("early confirmation", 2, "RecordLog.cs", "session.Confirmed = TryNote(session);", "session.Confirmed = true;"),
        new("confirmations are not read", 2, "LogRecovery.cs", "TakeNotes(table, lastPage);\n        }", "}"),
        new("writes over what cannot be read just now", 2, "LogTail.cs", "NextPage = AfterSpoiled(LastPage + 1);", "NextPage = LastPage + 1;"),
        new("begins again over what cannot be read just now", 2, "RecordLog.cs", "nextPage = tail.FirstPage;", "nextPage = 0;"),
        new("takes one lost page for the end of the log", 2, "LogTail.cs", "page < end && others <= pages.LongestBlock;", "page < end && others < 1;"),
        new("asks the first page only how old the log is", 2, "LogTail.cs", "known <= pages.LongestBlock;", "known < 1;"),
        new("a spoiled page at the end hides the session", 2, "LogRecovery.cs", "page--;\n                    continue;", "return;"),
        new("recovery stops at the first page that it cannot read", 2, "LogRecovery.cs", "UnreadablePages++;\n                return page;", "UnreadablePages++;\n                return 0;"),
        // It asks the card again each time: going round among remembered pages it would hang the simulator, which counts reads.
        new("halving that does not end", 3, "LogTail.cs", "low = found < 0 ? low : found;", "pages.Forget();"),
        new("cleans the card up while it recovers", 3, "RecordLog.cs", "lastNumber = pages.HighestNumber", "pages.Write(nextPage, new byte[pages.PageLength], pages.PageLength);\n            lastNumber = pages.HighestNumber"),
        new("a gap is bridged", 4, "SessionBytes.cs", "nextStart = nextPage <= source.LastPage ? pages.Header.SessionOffset : source.Length;", "nextStart = nextPage <= source.LastPage ? pageEnd : source.Length;"),
        new("a page says where its block begins, not where it stands", 4, "BlockWriter.cs", "sessionOffset + (uint)(i * pages.PayloadLength);", "sessionOffset;"),
        new("begins again over sessions that the host does not have", 5, "RecordLog.cs", "if (scarce && Sessions.AllConfirmed())", "if (scarce)"),
        new("no room is kept for the end", 5, "RecordLog.cs", "pages.Count - nextPage - (ClosingBytes / pages.PayloadLength) - Sessions.Count - 3;", "pages.Count - nextPage + 6;"),
    ];
}
