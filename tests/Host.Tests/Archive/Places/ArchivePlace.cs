using System;
using System.Data.Common;
using System.Linq;
using LoggerBox.Host.Archive;

namespace LoggerBox.Host.Tests.Archive.Places;

/// <summary>Where a test keeps its archives, and how it reaches behind them. Each name is an archive of its own.</summary>
public abstract class ArchivePlace : IDisposable
{
    /// <summary>An expression of as many zeros as a part has bytes.</summary>
    public abstract string Zeros { get; }

    /// <summary>The word with which a table goes that others point at.</summary>
    protected abstract string AndAllThatPointsAtIt { get; }

    /// <summary>The folder of its scripts.</summary>
    protected abstract string Store { get; }

    /// <summary>As somebody would name it with --archive.</summary>
    public abstract string At(string name);

    /// <summary>A connection past the archive's own code.</summary>
    public abstract DbConnection Connect(string name);

    public abstract void SetVersion(string name, long version);

    /// <summary>Makes it busy, as another program in the middle of a change does, until it is disposed.</summary>
    public abstract IDisposable Hold(string name);

    /// <summary>Makes the rows of a table belong to a row that is not there.</summary>
    public abstract void Orphan(string name, string table, string column);

    public abstract void Dispose();

    public ArchiveFile Open(string name = "archive") => ArchiveFile.Open(At(name));

    public void Execute(string name, string statements)
    {
        using DbConnection open = Connect(name);
        using DbCommand command = open.CreateCommand();
#pragma warning disable CA2100 // The tests' own words.
        command.CommandText = statements;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }

    /// <summary>An archive as a program of that version of the schema left it.</summary>
    public void MakeOlder(string name, int version, string rows)
    {
        Execute(name, string.Concat(Enumerable.Range(1, version).Select(one => ArchiveSchema.Script(Store, one))));
        SetVersion(name, version);
        Execute(name, rows);
    }

    /// <summary>A table made of a query has no types, no checks and no triggers: writes into it what no program of ours would.</summary>
    public void Damage(string name, string table, string statement) =>
        Execute(name, $"CREATE TABLE loose AS SELECT * FROM {table}; DROP TABLE {table}{AndAllThatPointsAtIt}; ALTER TABLE loose RENAME TO {table}; {statement}");
}
