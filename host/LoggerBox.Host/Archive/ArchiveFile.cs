using System;
using System.IO;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Host.Archive;

/// <summary>
/// The shop's archive: one SQLite file with the record bytes as received, the jobs, and corrections as new rows.
/// Every change is one transaction that is on the disk when the call returns (write-ahead log, synchronous FULL).
/// </summary>
public sealed class ArchiveFile : IDisposable
{
    private static readonly TimeSpan PatienceWithAnotherProgram = TimeSpan.FromSeconds(5);

    private readonly SqliteConnection connection;

    private ArchiveFile(string path, SqliteConnection connection)
    {
        Path = path;
        this.connection = connection;
        Sessions = new SessionRows(this);
        Incoming = new IncomingSessions(this);
        Jobs = new JobRows(this);
        Corrections = new CorrectionRows(this);
        Gates = new GateRows(this);
        Calibrations = new CalibrationRows(this);
    }

    /// <summary>archive.sqlite in the user's data folder.</summary>
    public static string DefaultPath => System.IO.Path.Combine(
        Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify),
        "LoggerBox",
        "archive.sqlite");

    public string Path { get; }

    public SessionRows Sessions { get; }

    public IncomingSessions Incoming { get; }

    public JobRows Jobs { get; }

    public CorrectionRows Corrections { get; }

    public GateRows Gates { get; }

    public CalibrationRows Calibrations { get; }

    /// <summary>Opens the archive; creates it, and its folder, when there is none.</summary>
    /// <param name="patience">How long to wait for another program that holds the file, at least a second.</param>
    /// <exception cref="UserErrorException">No SQLite file, another program's file, a newer schema, not writable, or locked.</exception>
    public static ArchiveFile Open(string path, TimeSpan? patience = null)
    {
        try
        {
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path))!);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw ArchiveErrors.FolderMissing(path, error.Message);
        }

        return Connect(path, patience ?? PatienceWithAnotherProgram);
    }

    /// <summary>Opens an archive that must be there already: a mistyped name makes no empty file.</summary>
    public static ArchiveFile OpenExisting(string path, TimeSpan? patience = null)
    {
        if (!File.Exists(path))
        {
            throw ArchiveErrors.NoFile(path);
        }

        return Connect(path, patience ?? PatienceWithAnotherProgram);
    }

    /// <summary>Opens an archive to look at it: one that cannot be written (a protected folder, another user's file) is read as it is.</summary>
    public static ArchiveFile OpenForReading(string path, TimeSpan? patience = null)
    {
        if (!File.Exists(path))
        {
            throw ArchiveErrors.NoFile(path);
        }

        RefuseOtherFiles(path);
        try
        {
            return Connect(path, Settings(path, patience ?? PatienceWithAnotherProgram), ArchiveSchema.Prepare);
        }
        catch (SqliteException error) when (ArchiveErrors.MeansWriteProtected(error))
        {
            return Guard(path, () => ConnectProtected(path, patience ?? PatienceWithAnotherProgram));
        }
        catch (SqliteException error)
        {
            throw ArchiveErrors.FromSqlite(path, error);
        }
    }

    public void Dispose() => connection.Dispose();

    /// <summary>Runs queries; what SQLite refuses becomes a sentence.</summary>
    internal T Read<T>(Func<SqliteConnection, T> queries) => Guard(Path, () => queries(connection));

    /// <summary>Runs a change that happens wholly or not at all.</summary>
    internal T Change<T>(Func<SqliteConnection, T> statements) => Read(open =>
    {
        using SqliteTransaction transaction = open.BeginTransaction();
        T result = statements(open);
        transaction.Commit();
        return result;
    });

    private static ArchiveFile Connect(string path, TimeSpan patience)
    {
        RefuseOtherFiles(path);
        return Guard(path, () => Connect(path, Settings(path, patience), ArchiveSchema.Prepare));
    }

    // Nobody writes a file that is protected, so SQLite need not watch for it; only where changes wait in the log beside it must it try.
    private static ArchiveFile ConnectProtected(string path, TimeSpan patience)
    {
        SqliteConnectionStringBuilder settings = Settings(path, patience);
        settings.Mode = SqliteOpenMode.ReadOnly;
        FileInfo log = new(path + "-wal");
        if (!log.Exists || log.Length == 0)
        {
            settings.DataSource = new Uri(System.IO.Path.GetFullPath(path)).AbsoluteUri + "?immutable=1";
        }

        try
        {
            return Connect(path, settings, ArchiveSchema.Check);
        }
        catch (SqliteException error) when (ArchiveErrors.MeansWriteProtected(error))
        {
            throw ArchiveErrors.NotClosedInOrder(path);
        }
    }

    private static ArchiveFile Connect(string path, SqliteConnectionStringBuilder settings, Action<SqliteConnection, string> prepare)
    {
        SqliteConnection connection = new(settings.ConnectionString);
        try
        {
            connection.Open();
            prepare(connection, path);
            return new ArchiveFile(path, connection);
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

    private static void RefuseOtherFiles(string path)
    {
        try
        {
            ArchiveSchema.RefuseOtherFiles(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw ArchiveErrors.CannotOpen(path);
        }
    }

    private static T Guard<T>(string path, Func<T> work)
    {
        try
        {
            return work();
        }
        catch (SqliteException error)
        {
            throw ArchiveErrors.FromSqlite(path, error);
        }
        catch (DamagedRowException)
        {
            throw ArchiveErrors.DamagedRow(path);
        }
    }
}
