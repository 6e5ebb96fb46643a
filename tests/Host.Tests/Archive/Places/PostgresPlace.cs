using System;
using System.Collections.Concurrent;
using System.Data.Common;
using System.Threading;
using Npgsql;

namespace LoggerBox.Host.Tests.Archive.Places;

/// <summary>Archives as schemas of one database on the tests' server, each found by the search path of its connection.</summary>
public sealed class PostgresPlace : ArchivePlace
{
    private static readonly Lazy<string> Database = new(() => PostgresServer.Shared.NewDatabase());
    private static int schemas;

    private readonly ConcurrentDictionary<string, string> places = new();

    public override string Zeros => "decode(repeat('00', length(bytes)), 'hex')";

    protected override string AndAllThatPointsAtIt => " CASCADE";

    protected override string Store => "Postgres";

    public override string At(string name) => places.GetOrAdd(name, _ =>
    {
        string schema = $"shop{Interlocked.Increment(ref schemas)}";
        PostgresServer.Shared.Execute(Database.Value, $"CREATE SCHEMA {schema}");
        return $"{PostgresServer.Shared.Settings(Database.Value)};Search Path={schema}";
    });

    public override DbConnection Connect(string name)
    {
        NpgsqlConnection open = new(At(name));
        open.Open();
        return open;
    }

    public override void SetVersion(string name, long version) => Execute(name, $"UPDATE loggerbox_archive SET version = {version}");

    public override IDisposable Hold(string name)
    {
        DbConnection open = Connect(name);
        DbTransaction change = open.BeginTransaction();
        using DbCommand command = open.CreateCommand();
        command.CommandText = "SELECT version FROM loggerbox_archive FOR UPDATE";
        command.ExecuteScalar();
        return new Held(open, change);
    }

    // As a replica the server believes what it is told.
    public override void Orphan(string name, string table, string column) => Execute(name, $"SET session_replication_role = replica; UPDATE {table} SET {column} = 99");

    // The server goes with the tests.
    public override void Dispose()
    {
    }
}
