using System;
using System.Collections.Generic;
using System.Data.Common;
using System.Linq;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Archive;

/// <summary>
/// Sessions on their way from a logger: begun, their parts stored in any order, completed when all bytes are here.
/// Each of these may be repeated without effect, and may be cut off between any two.
/// </summary>
public sealed class IncomingSessions
{
    private readonly ArchiveFile archive;

    internal IncomingSessions(ArchiveFile archive) => this.archive = archive;

    /// <summary>Makes the row of a session of which nothing has arrived, or finds the one that is arriving. Returns its id.</summary>
    public string Begin(SessionIdentity identity, long length, SessionOrigin origin, string source, DateTimeOffset now) => archive.Change(open =>
    {
        List<long> there = open.Rows(
            "SELECT id FROM sessions" + SessionColumns.OfTheseNumbers + " AND state = 'arriving'",
            row => row.GetInt64(0),
            SessionColumns.Numbers(identity, length));
        return RowId.Session(there.Count > 0
            ? there[0]
            : open.Scalar(SessionColumns.Insert, SessionColumns.OfNew(identity, length, "arriving", origin, source, now)));
    });

    /// <summary>Stores bytes of a session; they are on the disk when this returns. Bytes that are here already are left as they are.</summary>
    public void StorePart(string id, long start, byte[] bytes) => StoreParts(id, [(start, bytes)]);

    /// <summary>Stores several stretches in one go: all of them are on the disk when this returns, or none.</summary>
    public void StoreParts(string id, IEnumerable<(long Start, byte[] Bytes)> parts) => archive.Change(open =>
    {
        Store(open, archive.Sessions.RowOf(open, id), parts);
        return true;
    });

    /// <summary>What has not arrived, in order.</summary>
    public IReadOnlyList<ByteRange> Missing(string id) => archive.Read(open =>
        SessionParts.Received(open, archive.Sessions.RowOf(open, id)).HolesIn(new ByteRange(0, archive.Sessions.Find(open, id).Length)));

    /// <summary>Reads the records of a session whose bytes are all here and marks it complete.</summary>
    /// <param name="last">What is to be stored first, in the same go.</param>
    /// <returns>The session's row: another one where the archive holds the same content already.</returns>
    /// <exception cref="UserErrorException">Bytes are missing.</exception>
    public ArchivedSession Complete(string id, IEnumerable<(long Start, byte[] Bytes)>? last = null) => archive.Change(open =>
    {
        Store(open, archive.Sessions.RowOf(open, id), last ?? []);
        ArchivedSession arriving = archive.Sessions.Find(open, id);
        if (arriving.Received != arriving.Length)
        {
            throw ArchiveErrors.Incomplete(archive.Path, arriving.Id, arriving.Received, arriving.Length);
        }

        long row = archive.Sessions.RowOf(open, id);
        byte[] bytes = SessionParts.Load(open, row, arriving.Length) ?? throw ArchiveErrors.DamagedSession(archive.Path, arriving.Id);
        uint crc = Castagnoli.Of(bytes);
        ArchivedSession? same = SessionRows.Complete(open, arriving.Identity, arriving.Length).FirstOrDefault(other => other.Crc == crc);
        if (same is null)
        {
            open.Execute(SessionColumns.Complete, SessionColumns.OfRecords(row, crc, SessionDecoder.Decode(bytes)));
        }
        else if (same.Id != arriving.Id)
        {
            SetAside(open, row);
        }

        return archive.Sessions.Find(open, same?.Id ?? arriving.Id);
    });

    /// <summary>Keeps, and no longer shows, bytes that do not agree with the logger: another session of the same numbers came between.</summary>
    public void SetAside(string id) => archive.Change(open =>
    {
        SetAside(open, archive.Sessions.RowOf(open, id));
        return true;
    });

    private static void Store(DbConnection open, long row, IEnumerable<(long Start, byte[] Bytes)> parts)
    {
        foreach ((long start, byte[] bytes) in parts)
        {
            SessionParts.Store(open, row, start, bytes);
        }
    }

    private static void SetAside(DbConnection open, long row) =>
        open.Execute("UPDATE sessions SET state = 'set-aside' WHERE id = @id", ("@id", row));
}
