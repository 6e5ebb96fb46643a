using System;
using System.Collections.Generic;
using System.Data.Common;
using System.IO;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Archive;

/// <summary>A session's bytes as the pieces in which they arrived.</summary>
internal static class SessionParts
{
    // Of a row that does not fit into a page SQLite keeps the least among the others and fills pages of 4096 bytes with what is over
    // (https://sqlite.org/fileformat2.html section 1.6): 489 bytes, up to 16 of which are the row's own fields, and 4092 a page.
    public const int LocalBytes = 489 - 16;
    public const int OverflowBytes = 4092;
    private const int LongestInPage = LocalBytes + OverflowBytes - 1;

    // Each statement holds copies of its bytes: of a long session's whole, or of long pieces that stay about for a while, they would fill the memory.
    private const int LongestPart = LocalBytes + (16 * OverflowBytes);

    /// <summary>Stores what is not here yet of these bytes; what is here stays as it is.</summary>
    public static void Store(DbConnection open, long session, long start, byte[] bytes)
    {
        ByteRange wanted = new(start, start + bytes.Length);
        foreach (ByteRange hole in ReceivedAround(open, session, wanted).HolesIn(wanted))
        {
            for (long at = hole.Start; at < hole.End;)
            {
                int length = FillingPages((int)Math.Min(LongestPart, hole.End - at));
                open.Execute(
                    "INSERT INTO parts (session, start, bytes) VALUES (@session, @start, @bytes)",
                    ("@session", session),
                    ("@start", at),
                    ("@bytes", bytes.AsSpan((int)(at - start), length).ToArray()));
                at += length;
            }
        }
    }

    /// <summary>So many of these bytes as fill pages of their own to the end; the rest is a row that lies among others.</summary>
    private static int FillingPages(int length) => length <= LongestInPage ? length : LocalBytes + ((length - LocalBytes) / OverflowBytes * OverflowBytes);

    public static ByteRanges Received(DbConnection open, long session) => Ranges(open, "", ("@session", session));

    // Of a long session's parts only those that matter: one before, which may reach into this range, and those that begin in it.
    private static ByteRanges ReceivedAround(DbConnection open, long session, ByteRange range) => Ranges(
        open,
        " AND start < @end AND start >= coalesce((SELECT max(start) FROM parts WHERE session = @session AND start <= @start), 0)",
        ("@session", session),
        ("@start", range.Start),
        ("@end", range.End));

    private static ByteRanges Ranges(DbConnection open, string which, params (string Name, object? Value)[] parameters)
    {
        ByteRanges ranges = new();
        open.Rows(
            "SELECT start, start + length(bytes) FROM parts WHERE session = @session" + which + " ORDER BY start",
            part => new ByteRange(part.GetInt64(0), part.GetInt64(1)),
            parameters).ForEach(ranges.Add);
        return ranges;
    }

    /// <summary>All bytes of a session of this length. Null where the parts do not make it up, one after the other.</summary>
    public static byte[]? Load(DbConnection open, long session, long length)
    {
        // What is really there is counted first: a damaged row may claim any length.
        if (open.Scalar("SELECT sum(length(bytes)) FROM parts WHERE session = @session", ("@session", session)) != length || length > Array.MaxLength)
        {
            return null;
        }

        // One copy of a session in memory, not three: a long one has tens of megabytes.
        byte[] bytes = new byte[length];
        long end = 0;
        open.Rows(
            "SELECT start, bytes FROM parts WHERE session = @session ORDER BY start",
            part =>
            {
                byte[] piece = part.GetFieldValue<byte[]>(1);
                piece.CopyTo(bytes, part.GetInt64(0) == end ? end : throw new DamagedRowException("parts that do not follow each other"));
                return end += piece.Length;
            },
            ("@session", session));
        return bytes;
    }
}
