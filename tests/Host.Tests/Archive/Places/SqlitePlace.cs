using System;
using System.Data.Common;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Host.Tests.Archive.Places;

/// <summary>Archives as files of a folder.</summary>
public sealed class SqlitePlace : ArchivePlace
{
    private readonly TemporaryFolder folder = new();

    public override string Zeros => "zeroblob(length(bytes))";

    protected override string AndAllThatPointsAtIt => "";

    protected override string Store => "Sqlite";

    public override string At(string name) => folder.File(name + ".sqlite");

    public override DbConnection Connect(string name)
    {
        SqliteConnection open = new($"Data Source={At(name)};Pooling=False;Foreign Keys=False");
        open.Open();
        return open;
    }

    public override void SetVersion(string name, long version) => Execute(name, $"PRAGMA application_id = 0x4C674278; PRAGMA user_version = {version}");

    public override IDisposable Hold(string name) => Connect(name) is SqliteConnection open ? new Held(open, open.BeginTransaction()) : throw new InvalidOperationException(name);

    public override void Orphan(string name, string table, string column) => Execute(name, $"UPDATE {table} SET {column} = 99");

    public override void Dispose() => folder.Dispose();
}
