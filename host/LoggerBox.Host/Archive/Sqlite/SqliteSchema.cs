using System;
using System.IO;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Host.Archive.Sqlite;

/// <summary>Recognises an archive, creates a new one, brings an older one up to date, refuses what it does not know. user_version is the schema's version.</summary>
internal static class SqliteSchema
{
    /// <summary>"LgBx", written into the file's header so that another program's SQLite file is told apart.</summary>
    private const long ApplicationId = 0x4C674278;

    private const int CacheKibibytes = 16 * 1024;

    // The first bytes of every SQLite file, https://sqlite.org/fileformat.html section 1.3
    private static ReadOnlySpan<byte> Magic => "SQLite format 3\0"u8;

    /// <summary>Looks at the file itself: SQLite takes one of a byte or two for an empty database and would write over it.</summary>
    public static void RefuseOtherFiles(string path)
    {
        if (!File.Exists(path))
        {
            return;
        }

        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        byte[] start = new byte[Magic.Length];
        int length = file.ReadAtLeast(start, start.Length, throwOnEndOfStream: false);
        if (length > 0 && !start.AsSpan(0, length).SequenceEqual(Magic))
        {
            throw SqliteErrors.NotSqlite(path);
        }
    }

    public static void Prepare(SqliteConnection connection, string path)
    {
        // The check comes first: journal_mode would already change a file that is not ours.
        if (VersionOf(connection, path) < ArchiveSchema.Version)
        {
            using SqliteTransaction transaction = connection.BeginTransaction();
            for (long version = VersionOf(connection, path); version < ArchiveSchema.Version; version++)
            {
                connection.Execute(ArchiveSchema.Script("Sqlite", version + 1));
                connection.Execute($"PRAGMA application_id = {ApplicationId}; PRAGMA user_version = {version + 1};");
            }

            transaction.Commit();
        }

        // Pages of a change that do not fit are written ahead of its end, and all of the log is then read and written once more: eight hours fit.
        connection.Execute($"PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA cache_size = -{CacheKibibytes};");
    }

    /// <summary>For an archive that cannot be brought up to date: it must be so already.</summary>
    public static void Check(SqliteConnection connection, string path)
    {
        if (VersionOf(connection, path) < ArchiveSchema.Version)
        {
            throw SqliteErrors.Older(path);
        }
    }

    /// <summary>The schema's version; 0 for a new, empty file.</summary>
    private static long VersionOf(SqliteConnection connection, string path)
    {
        long application = connection.Scalar("PRAGMA application_id");
        long version = connection.Scalar("PRAGMA user_version");
        if (application == ApplicationId)
        {
            return version <= ArchiveSchema.Version ? version : throw ArchiveErrors.Newer(path, version);
        }

        bool empty = application == 0 && version == 0 && connection.Scalar("SELECT count(*) FROM sqlite_schema") == 0;
        return empty ? 0 : throw SqliteErrors.OfAnotherProgram(path);
    }
}
