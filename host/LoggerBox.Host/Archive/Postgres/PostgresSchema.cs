using System;
using System.Data;
using Npgsql;

namespace LoggerBox.Host.Archive.Postgres;

/// <summary>Recognises an archive among a database's tables, creates a new one, brings an older one up to date, refuses what it does not know.</summary>
internal static class PostgresSchema
{
    /// <summary>"LgBx": two programs that make the same archive at once wait for each other by this number.</summary>
    private const long MakingLock = 0x4C674278;

    // Tables that an extension brought are nobody's: a server's owner may have put some into every database.
    private const string Look =
        """
        SELECT current_schema(), current_setting('server_encoding'),
            count(*) FILTER (WHERE relname = 'loggerbox_archive'), count(*)
        FROM pg_class
        WHERE relnamespace = to_regnamespace(quote_ident(current_schema())) AND relkind IN ('r', 'p', 'v', 'm', 'f')
            AND NOT EXISTS (SELECT 1 FROM pg_depend WHERE classid = 'pg_class'::regclass AND objid = pg_class.oid AND deptype = 'e')
        """;

    public static void Prepare(NpgsqlConnection open, PostgresAddress at, ArchiveUse use)
    {
        long version = VersionOf(open, at.Name);
        if (version == 0 && use != ArchiveUse.Create)
        {
            throw PostgresErrors.NoArchive(at.Name);
        }

        if (version < ArchiveSchema.Version)
        {
            try
            {
                BringUpToDate(open, at.Name);
            }
            catch (PostgresException error) when (error.SqlState is PostgresErrorCodes.InsufficientPrivilege or PostgresErrorCodes.ReadOnlySqlTransaction)
            {
                throw version == 0 ? PostgresErrors.CannotCreate(at.Name, at.User) : PostgresErrors.Older(at.Name);
            }
        }
    }

    private static void BringUpToDate(NpgsqlConnection open, string name)
    {
        using NpgsqlTransaction change = open.BeginTransaction(IsolationLevel.ReadCommitted);
        open.Execute("SELECT pg_advisory_xact_lock(@lock)", ("@lock", MakingLock));
        for (long version = VersionOf(open, name); version < ArchiveSchema.Version; version++)
        {
            open.Execute(ArchiveSchema.Script("Postgres", version + 1));
            open.Execute("UPDATE loggerbox_archive SET version = @version", ("@version", version + 1));
        }

        change.Commit();
    }

    /// <summary>The schema's version; 0 where there is no table yet.</summary>
    private static long VersionOf(NpgsqlConnection open, string name)
    {
        (string? schema, string encoding, long ours, long all) = open.Rows(
            Look, row => (row.IsDBNull(0) ? null : row.GetString(0), row.GetString(1), row.GetInt64(2), row.GetInt64(3)))[0];
        if (schema is null)
        {
            throw PostgresErrors.NoSchema(name);
        }

        if (ours == 0)
        {
            return all > 0 ? throw PostgresErrors.OfAnotherProgram(name, schema) : encoding == "UTF8" ? 0 : throw PostgresErrors.NotUnicode(name, encoding);
        }

        long version = open.Scalar("SELECT version FROM loggerbox_archive");
        return version <= ArchiveSchema.Version ? version : throw ArchiveErrors.Newer(name, version);
    }
}
