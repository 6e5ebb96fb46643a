using System;
using System.Collections.Generic;
using System.Data.Common;
using System.IO;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Host.Archive.Sqlite;

/// <summary>An archive in one SQLite file: write-ahead log, synchronous FULL, one writer at a time by SQLite's own lock.</summary>
internal sealed class SqliteStore : IArchiveStore
{
    // More than anybody reads; a file with so many is restored, not mended.
    private const int MostStructureFaults = 20;

    private readonly SqliteConnection connection;

    private SqliteStore(string path, SqliteConnection connection)
    {
        Name = path;
        this.connection = connection;
    }

    public string Name { get; }

    public DbConnection Connection => connection;

    public static SqliteStore Open(string path, ArchiveUse use, TimeSpan patience)
    {
        if (use == ArchiveUse.Create)
        {
            MakeFolder(path);
        }
        else if (!File.Exists(path))
        {
            throw SqliteErrors.NoFile(path);
        }

        RefuseOtherFiles(path);
        try
        {
            return Connect(path, Settings(path, patience), SqliteSchema.Prepare);
        }
        catch (SqliteException error) when (use == ArchiveUse.Look && SqliteErrors.MeansWriteProtected(error))
        {
            return ConnectProtected(path, patience);
        }
        catch (SqliteException error)
        {
            throw SqliteErrors.Of(path, error);
        }
    }

    public void Dispose() => connection.Dispose();

    public DbTransaction BeginChange() => connection.BeginTransaction();

    public DbTransaction BeginLook() => connection.BeginTransaction(deferred: true);

    public UserErrorException? Told(Exception error) => error is SqliteException refusal ? SqliteErrors.Of(Name, refusal) : null;

    public List<string> StructureFaults()
    {
        List<string> faults = connection.Rows($"PRAGMA integrity_check({MostStructureFaults})", row => row.GetString(0));
        faults.RemoveAll(fault => fault == "ok");
        faults.AddRange(connection.Rows("PRAGMA foreign_key_check", row => $"a row of {row.GetString(0)} belongs to nothing"));
        return faults;
    }

    // Page by page, by SQLite's own backup: it begins anew where another program writes meanwhile.
    public bool CopyItself(string path)
    {
        using SqliteConnection copy = new(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ConnectionString);
        copy.Open();
        connection.BackupDatabase(copy);
        return true;
    }

    // Nobody writes a file that is protected, so SQLite need not watch for it; only where changes wait in the log beside it must it try.
    private static SqliteStore ConnectProtected(string path, TimeSpan patience)
    {
        SqliteConnectionStringBuilder settings = Settings(path, patience);
        settings.Mode = SqliteOpenMode.ReadOnly;
        FileInfo log = new(path + "-wal");
        if (!log.Exists || log.Length == 0)
        {
            settings.DataSource = new Uri(Path.GetFullPath(path)).AbsoluteUri + "?immutable=1";
        }

        try
        {
            return Connect(path, settings, SqliteSchema.Check);
        }
        catch (SqliteException error) when (SqliteErrors.MeansWriteProtected(error))
        {
            throw SqliteErrors.NotClosedInOrder(path);
        }
        catch (SqliteException error)
        {
            throw SqliteErrors.Of(path, error);
        }
    }

    private static SqliteStore Connect(string path, SqliteConnectionStringBuilder settings, Action<SqliteConnection, string> prepare)
    {
        SqliteConnection connection = new(settings.ConnectionString);
        try
        {
            connection.Open();
            prepare(connection, path);
            return new SqliteStore(path, connection);
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    private static SqliteConnectionStringBuilder Settings(string path, TimeSpan patience) => new()
    {
        DataSource = path,
        Pooling = false,
        ForeignKeys = true,
        DefaultTimeout = Math.Max(1, (int)Math.Ceiling(patience.TotalSeconds)),
    };

    private static void MakeFolder(string path)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw SqliteErrors.FolderMissing(path, error.Message);
        }
    }

    private static void RefuseOtherFiles(string path)
    {
        try
        {
            SqliteSchema.RefuseOtherFiles(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw SqliteErrors.CannotOpen(path);
        }
    }
}
