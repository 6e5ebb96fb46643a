using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Framing;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Host.Archive;

/// <summary>
/// Sessions and their bytes. A session is begun, its parts are stored in any order, and it is completed when its check sum is right;
/// each of these may be repeated without effect.
/// </summary>
public sealed class SessionRows
{
    private readonly ArchiveFile archive;

    internal SessionRows(ArchiveFile archive) => this.archive = archive;

    /// <summary>Adds a whole session at once. The same bytes a second time are the same session.</summary>
    /// <exception cref="UserErrorException">There are no bytes.</exception>
    public AddedSession Add(byte[] bytes, SessionOrigin origin, string source, DateTimeOffset now)
    {
        if (bytes.Length == 0)
        {
            throw new UserErrorException($"{source} holds no records: nothing was archived; record a session first.");
        }

        RecordedSession session = SessionDecoder.Decode(bytes).Session;
        SessionIdentity identity = new(session.Header.LoggerId, session.Header.BootCount, session.Header.SessionNumber);
        return archive.Change(open =>
        {
            AddedSession added = Begin(open, identity, bytes.Length, Crc32.Of(bytes, 0, bytes.Length), origin, source, now);
            if (!Find(open, added.Id).Complete)
            {
                StorePart(open, added.Id, 0, bytes);
                TryComplete(open, added.Id);
            }

            return added;
        });
    }

    /// <summary>Makes the row of a session of which nothing has arrived yet, or finds the one that is there.</summary>
    public AddedSession Begin(SessionIdentity identity, long length, uint crc, SessionOrigin origin, string source, DateTimeOffset now) =>
        archive.Change(open => Begin(open, identity, length, crc, origin, source, now));

    /// <summary>Stores bytes of a session durably. Bytes that are here already are left as they are.</summary>
    public void StorePart(string id, long start, byte[] bytes) => archive.Change(open =>
    {
        StorePart(open, id, start, bytes);
        return true;
    });

    /// <summary>What of a session has not arrived, in order.</summary>
    public IReadOnlyList<ByteRange> Missing(string id) => archive.Read(open =>
        Received(open, RowOf(open, id)).HolesIn(new ByteRange(0, Find(id).Length)));

    /// <summary>Checks the whole session's check sum, reads its records and marks it complete; false where the bytes are not those announced.</summary>
    public bool TryComplete(string id) => archive.Change(open => TryComplete(open, id));

    public IReadOnlyList<ArchivedSession> All() => archive.Read(open => open.Rows(SessionColumns.Select + " ORDER BY id", SessionColumns.FromRow));

    /// <exception cref="UserErrorException">There is no such session.</exception>
    public ArchivedSession Find(string id) => archive.Read(open => Find(open, id));

    /// <exception cref="UserErrorException">There is no such session, or it has arrived only in part.</exception>
    public LoadedSession Load(string id) => archive.Read(open =>
    {
        ArchivedSession row = Find(open, id);
        if (!row.Complete)
        {
            throw ArchiveErrors.Incomplete(archive.Path, row.Id, row.Received, row.Length);
        }

        byte[] bytes = Bytes(open, row);
        return new LoadedSession(row, bytes, SessionDecoder.Decode(bytes).Session);
    });

    internal long RowOf(SqliteConnection open, string id)
    {
        Find(open, id);
        RowId.TryParse(id, 'S', out long row);
        return row;
    }

    private static AddedSession Begin(
        SqliteConnection open, SessionIdentity identity, long length, uint crc, SessionOrigin origin, string source, DateTimeOffset now)
    {
        (string, object?)[] key =
        [
            ("$logger", (long)identity.LoggerId),
            ("$boot", (long)identity.BootCount),
            ("$number", (long)identity.SessionNumber),
            ("$length", length),
            ("$crc", (long)crc),
        ];
        int inserted = open.Execute(
            """
            INSERT OR IGNORE INTO sessions (logger_id, boot_count, session_number, length, crc, origin, source, stored_utc, stored_offset_minutes)
            VALUES ($logger, $boot, $number, $length, $crc, $origin, $source, $now, $offset)
            """,
            [
                .. key,
                ("$origin", SessionColumns.Written(origin)),
                ("$source", source),
                ("$now", now.ToUnixTimeSeconds()),
                ("$offset", (long)now.Offset.TotalMinutes),
            ]);
        long row = open.Scalar(
            """
            SELECT id FROM sessions
            WHERE logger_id = $logger AND boot_count = $boot AND session_number = $number AND length = $length AND crc = $crc
            """,
            key);
        return new AddedSession(RowId.Session(row), inserted == 1);
    }

    private void StorePart(SqliteConnection open, string id, long start, byte[] bytes)
    {
        long row = RowOf(open, id);
        foreach (ByteRange hole in Received(open, row).HolesIn(new ByteRange(start, start + bytes.Length)))
        {
            open.Execute(
                "INSERT INTO parts (session, start, bytes) VALUES ($session, $start, $bytes)",
                ("$session", row),
                ("$start", hole.Start),
                ("$bytes", bytes.AsSpan((int)(hole.Start - start), (int)hole.Length).ToArray()));
        }
    }

    private bool TryComplete(SqliteConnection open, string id)
    {
        ArchivedSession row = Find(open, id);
        byte[] bytes = row.Received == row.Length ? Bytes(open, row) : [];
        if (bytes.Length != row.Length || Crc32.Of(bytes, 0, bytes.Length) != row.Crc)
        {
            return false;
        }

        open.Execute(SessionColumns.Complete, SessionColumns.OfRecords(RowOf(open, id), SessionDecoder.Decode(bytes)));
        return true;
    }

    private static ByteRanges Received(SqliteConnection open, long row)
    {
        ByteRanges received = new();
        open.Rows(
            "SELECT start, start + length(bytes) FROM parts WHERE session = $session ORDER BY start",
            part => new ByteRange(part.GetInt64(0), part.GetInt64(1)),
            ("$session", row)).ForEach(received.Add);
        return received;
    }

    private byte[] Bytes(SqliteConnection open, ArchivedSession row) => open
        .Rows("SELECT bytes FROM parts WHERE session = $session ORDER BY start", part => (byte[])part.GetValue(0), ("$session", RowOf(open, row.Id)))
        .SelectMany(part => part)
        .ToArray();

    private ArchivedSession Find(SqliteConnection open, string id) =>
        (RowId.TryParse(id, 'S', out long row)
            ? open.Rows(SessionColumns.Select + " WHERE id = $id", SessionColumns.FromRow, ("$id", row)).FirstOrDefault()
            : null)
        ?? throw ArchiveErrors.NoSuchSession(archive.Path, id);
}

/// <param name="IsNew">False where the archive had the session already.</param>
public sealed record AddedSession(string Id, bool IsNew);
