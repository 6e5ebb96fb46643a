using System;
using System.Collections.Generic;
using System.Data.Common;
using System.Linq;
using System.Threading.Tasks;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Archive;

/// <summary>The sessions that the archive holds. Nothing here changes recorded bytes.</summary>
public sealed class SessionRows
{
    private readonly ArchiveFile archive;

    internal SessionRows(ArchiveFile archive) => this.archive = archive;

    /// <summary>Adds a whole session at once. The same bytes a second time are the same session.</summary>
    /// <param name="source">The port, or the file's name without folder.</param>
    /// <exception cref="UserErrorException">There are no bytes.</exception>
    public AddedSession Add(byte[] bytes, SessionOrigin origin, string source, DateTimeOffset now)
    {
        if (bytes.Length == 0)
        {
            throw new UserErrorException($"{source} holds no records: nothing was archived; record a session first.");
        }

        // The processors read the records while the disk takes the bytes: what a session is of need not be known before it is stored.
        Task<DecodedSession> reading = Task.Run(() => SessionDecoder.Decode(bytes));
        uint crc = Castagnoli.Of(bytes);
        return archive.Change(open =>
        {
            if (open.Scalar(SessionColumns.CountOfSum, ("@length", (long)bytes.Length), ("@crc", (long)crc)) > 0
                && Complete(open, IdentityOf(reading.Result), bytes.Length).Find(row => row.Crc == crc) is { } same)
            {
                return new AddedSession(same.Id, IsNew: false);
            }

            long row = Store(open, new SessionIdentity(0, 0, 0), bytes, origin, source, now);
            open.Execute(SessionColumns.Identify, [("@id", row), .. SessionColumns.Numbers(IdentityOf(reading.Result), 0)[..3]]);
            open.Execute(SessionColumns.Complete, SessionColumns.OfRecords(row, crc, reading.Result));
            return new AddedSession(RowId.Session(row), IsNew: true);
        });
    }

    /// <summary>All that are here, whole or still arriving, oldest first.</summary>
    public IReadOnlyList<ArchivedSession> All() => archive.Read(open =>
        open.Rows(SessionColumns.Select + " WHERE state <> 'set-aside' ORDER BY id", SessionColumns.FromRow));

    /// <summary>The whole sessions of these numbers and this length: one, unless a logger counted from the beginning again.</summary>
    public IReadOnlyList<ArchivedSession> Complete(SessionIdentity identity, long length) => archive.Read(open => Complete(open, identity, length));

    /// <exception cref="UserErrorException">There is no such session.</exception>
    public ArchivedSession Find(string id) => archive.Read(open => Find(open, id));

    /// <exception cref="UserErrorException">There is no such session, or it has arrived only in part.</exception>
    public ArchivedSession FindWhole(string id) => Whole(Find(id));

    /// <exception cref="UserErrorException">There is no such session, it has arrived only in part, or the archive is damaged.</exception>
    public LoadedSession Load(string id)
    {
        (ArchivedSession row, byte[] bytes) = archive.Read(open =>
        {
            ArchivedSession found = Find(open, id);
            return (found, Bytes(open, found));
        });

        // Every sample set was read when the session was taken in, and the CRC says that these are the same bytes.
        bool isSound = row.Damage is { Records: 0, Bytes: 0 };
        return new LoadedSession(row, bytes, (isSound ? SessionDecoder.Reopen(bytes) : SessionDecoder.Decode(bytes)).Session);
    }

    /// <summary>The record bytes as received: all that most need, and much less than the records read out of them.</summary>
    /// <exception cref="UserErrorException">There is no such session, it has arrived only in part, or the archive is damaged.</exception>
    public byte[] Bytes(string id) => archive.Read(open => Bytes(open, Find(open, id)));

    /// <summary>To compare with what is elsewhere: nothing where the parts do not make the session up.</summary>
    internal byte[] BytesAsTheyAre(string id) => archive.Read(open => BytesAsTheyAre(open, Find(open, id)));

    private byte[] Bytes(DbConnection open, ArchivedSession row)
    {
        byte[] bytes = BytesAsTheyAre(open, Whole(row));
        return Castagnoli.Of(bytes) == row.Crc ? bytes : throw ArchiveErrors.DamagedSession(archive.Path, row.Id);
    }

    private ArchivedSession Whole(ArchivedSession row) => row.Complete ? row : throw ArchiveErrors.Incomplete(archive.Path, row.Id, row.Received, row.Length);

    private byte[] BytesAsTheyAre(DbConnection open, ArchivedSession row) => SessionParts.Load(open, RowOf(open, row.Id), row.Length) ?? [];

    internal long RowOf(DbConnection open, string id) =>
        RowId.TryParse(id, 'S', out long row) && open.Scalar("SELECT count(*) FROM sessions WHERE id = @id", ("@id", row)) == 1
            ? row
            : throw ArchiveErrors.NoSuchSession(archive.Path, id);

    internal ArchivedSession Find(DbConnection open, string id) =>
        (RowId.TryParse(id, 'S', out long row)
            ? open.Rows(SessionColumns.Select + " WHERE id = @id", SessionColumns.FromRow, ("@id", row)).FirstOrDefault()
            : null)
        ?? throw ArchiveErrors.NoSuchSession(archive.Path, id);

    /// <summary>Adds a whole session that is not here yet.</summary>
    internal static string Insert(
        DbConnection open,
        SessionIdentity identity,
        byte[] bytes,
        uint crc,
        DecodedSession decoded,
        SessionOrigin origin,
        string source,
        DateTimeOffset stored)
    {
        long row = Store(open, identity, bytes, origin, source, stored);
        open.Execute(SessionColumns.Complete, SessionColumns.OfRecords(row, crc, decoded));
        return RowId.Session(row);
    }

    private static long Store(DbConnection open, SessionIdentity identity, byte[] bytes, SessionOrigin origin, string source, DateTimeOffset stored)
    {
        // Not by way of an arriving row: one of the same numbers may be there, of another content.
        long row = open.Scalar(SessionColumns.Insert, SessionColumns.OfNew(identity, bytes.Length, "set-aside", origin, source, stored));
        SessionParts.Store(open, row, 0, bytes);
        return row;
    }

    private static SessionIdentity IdentityOf(DecodedSession decoded)
    {
        SessionHeader header = decoded.Session.Header;
        return new SessionIdentity(header.LoggerId, header.BootCount, header.SessionNumber);
    }

    /// <summary>The whole sessions of these numbers, of any length.</summary>
    internal static List<ArchivedSession> OfIdentity(DbConnection open, SessionIdentity identity) => open.Rows(
        SessionColumns.Select + " WHERE logger_id = @logger AND boot_count = @boot AND session_number = @number AND state = 'complete' ORDER BY id",
        SessionColumns.FromRow,
        SessionColumns.Numbers(identity, 0)[..3]);

    internal static List<ArchivedSession> Complete(DbConnection open, SessionIdentity identity, long length) => open.Rows(
        SessionColumns.Select + SessionColumns.OfTheseNumbers + " AND state = 'complete' ORDER BY id",
        SessionColumns.FromRow,
        SessionColumns.Numbers(identity, length));
}
