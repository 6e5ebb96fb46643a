using System;
using System.Collections.Generic;
using System.Data;
using System.Data.Common;
using System.Globalization;
using System.Linq;
using Npgsql;

namespace LoggerBox.Host.Archive.Postgres;

/// <summary>
/// An archive in a database of a PostgreSQL server, for several shops. One program changes it at a time, by the lock on the archive's own row, as
/// one program writes a SQLite file: what is looked up within a change stays true until it ends.
/// </summary>
internal sealed class PostgresStore : IArchiveStore
{
    // A program whose computer is gone must not hold the row until the network notices, which may take hours.
    private const string LongestPauseInAChange = "120s";

    private const string Settings =
        $"""
        SELECT set_config('lock_timeout', @patience, true), set_config('idle_in_transaction_session_timeout', '{LongestPauseInAChange}', true),
            CASE WHEN current_setting('synchronous_commit') = 'off' THEN set_config('synchronous_commit', 'on', true) END
        """;

    private readonly PostgresAddress address;
    private readonly NpgsqlDataSource source;
    private readonly NpgsqlConnection connection;
    private readonly TimeSpan patience;

    private PostgresStore(PostgresAddress address, NpgsqlDataSource source, NpgsqlConnection connection, TimeSpan patience)
    {
        this.address = address;
        this.source = source;
        this.connection = connection;
        this.patience = patience;
    }

    public string Name => address.Name;

    public DbConnection Connection => connection;

    public static PostgresStore Open(PostgresAddress address, ArchiveUse use, TimeSpan patience)
    {
        PostgresStore store = Connect(address, patience);
        try
        {
            PostgresSchema.Prepare(store.connection, address, use);
            return store;
        }
        catch (Exception error)
        {
            UserErrorException? refusal = store.Told(error);
            store.Dispose();
            if (refusal is not null)
            {
                throw refusal;
            }

            throw;
        }
    }

    public void Dispose()
    {
        connection.Dispose();
        source.Dispose();
    }

    public DbTransaction BeginChange()
    {
        NpgsqlTransaction change = connection.BeginTransaction(IsolationLevel.ReadCommitted);
        try
        {
            connection.Execute(Settings, ("@patience", ((long)patience.TotalMilliseconds).ToString(CultureInfo.InvariantCulture)));
            long version = connection.Scalar("SELECT version FROM loggerbox_archive FOR UPDATE");
            return version == ArchiveSchema.Version ? change : throw ArchiveErrors.Newer(Name, version);
        }
        catch
        {
            change.Dispose();
            throw;
        }
    }

    public DbTransaction BeginLook() => connection.BeginTransaction(IsolationLevel.RepeatableRead);

    public UserErrorException? Told(Exception error) => PostgresErrors.WhileWorking(address, connection.State == ConnectionState.Open, error);

    /// <summary>The server checks its own pages as it reads them, and says so in a refusal: all rows are read, but for the bytes, which come with their sessions.</summary>
    public List<string> StructureFaults()
    {
        List<string> faults = [];
        foreach (ArchiveTable table in ArchiveTable.All)
        {
            if (table != ArchiveTable.Parts)
            {
                connection.Rows($"SELECT * FROM {table.Name}", row => row.FieldCount);
            }

            faults.AddRange(table.Parents
                .Where(parent => connection.Scalar($"SELECT count(*) FROM {table.Name} WHERE NOT EXISTS (SELECT 1 FROM {parent.Table} WHERE {parent.Table}.id = {table.Name}.{parent.Column})") > 0)
                .Select(parent => $"a row of {table.Name} belongs to nothing"));
        }

        return faults;
    }

    public bool CopyItself(string path) => false;

    private static PostgresStore Connect(PostgresAddress address, TimeSpan patience)
    {
        NpgsqlDataSource? source = null;
        try
        {
            source = address.Source();
            return new PostgresStore(address, source, source.OpenConnection(), patience);
        }
        catch (Exception error) when (PostgresErrors.WhileConnecting(address, error) is { } refusal)
        {
            source?.Dispose();
            throw refusal;
        }
    }
}
