using System;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;

namespace LoggerBox.PowerLoss;

/// <summary>Compares what a recovered log gives out, byte for byte, with what was promised.</summary>
public sealed class Oracle
{
    private byte[] found = new byte[64 * 1024];

    /// <summary>Null when every promise is kept; else what is wrong.</summary>
    public string? Judge(RecordLog log, Ledger ledger)
    {
        uint last = 0;
        for (int i = 0; i < log.Sessions.Count; i++)
        {
            LoggedSession session = log.Sessions[i];
            Promise? promise = ledger.Find(session.Number);
            string? wrong = session.Number <= last ? "sessions out of order"
                : promise is null ? "nobody recorded it"
                : JudgeSession(log, session, promise);
            if (wrong is not null)
            {
                return $"session {session.Number}: {wrong}";
            }

            last = session.Number;
        }

        foreach (Promise promise in ledger.Sessions)
        {
            bool mayBeGone = promise.Free || promise.MayMiss(0, promise.Sure);
            if (!mayBeGone && log.Sessions.Find(promise.Number) is null)
            {
                return $"session {promise.Number}: lost, {promise.Sure} bytes were safe";
            }
        }

        return null;
    }

    private string? JudgeSession(RecordLog log, LoggedSession session, Promise promise)
    {
        int length = (int)session.Length;
        bool endLost = promise.MayMiss(length, promise.Sure);
        return session.BootCount != promise.BootCount ? "another start's"
            : length > promise.Possible ? $"{length} bytes, {promise.Possible} were recorded"
            : length < promise.Sure && !endLost && !promise.Free ? $"{length} bytes, {promise.Sure} were safe"
            : !promise.IsBoundary(length) ? "ends inside a record"
            : session.Ended && (!promise.MayBeEnded || length != promise.Possible) ? "ended, but never closed"
            : promise.SureEnded && !session.Ended && !endLost && !promise.Free ? "closed, but not ended"
            : session.Confirmed && !promise.MayBeConfirmed ? "confirmed, but never by the host"
            : promise.SureConfirmed && !session.Confirmed && !promise.Free ? "confirmation lost"
            : JudgeBytes(log, session, promise, length);
    }

    private string? JudgeBytes(RecordLog log, LoggedSession session, Promise promise, int length)
    {
        if (length > found.Length)
        {
            found = new byte[length * 2];
        }

        if (log.Read(session, 0, found, 0, length) != length)
        {
            return "gives fewer bytes than it says";
        }

        Span<byte> got = found.AsSpan(0, length);
        ReadOnlySpan<byte> given = promise.Bytes[..length];
        if (got.SequenceEqual(given))
        {
            return null;
        }

        for (int at = got.CommonPrefixLength(given); at < length && !promise.Free; at += got[at..].CommonPrefixLength(given[at..]))
        {
            LostRange lost = promise.LostAt(at);
            if (lost.To == 0)
            {
                return $"byte {at} differs";
            }

            at = Math.Min(lost.To, length);
        }

        return JudgeRecords(promise, length);
    }

    // Damage was allowed: what a reader takes as this session's records must be what was recorded at that place.
    private string? JudgeRecords(Promise promise, int length)
    {
        RecordScan scan = new(found, 0, length);
        int lastEnd = 0;
        while (scan.MoveNext())
        {
            int at = scan.Envelope.BodyOffset - RecordFormat.HeaderLength;
            int end = at + scan.Envelope.RecordLength;
            lastEnd = promise.Owns(scan.Envelope) ? end : lastEnd;
            if (promise.Owns(scan.Envelope) && !found.AsSpan(at, end - at).SequenceEqual(promise.Bytes[at..end]))
            {
                return $"a wrong record at {at}";
            }
        }

        return lastEnd == length || promise.MayMiss(length - 1, length) || promise.Free ? null : "does not end with a record of its own";
    }
}
