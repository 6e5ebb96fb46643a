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

    public void Dispose() => connection.Dispose();

    /// <summary>Runs queries; what SQLite refuses becomes a sentence.</summary>
    internal T Read<T>(Func<SqliteConnection, T> queries)
    {
        try
        {
            return queries(connection);
        }
        catch (SqliteException error)
        {
            throw ArchiveErrors.FromSqlite(Path, error);
        }
    }

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
        try
        {
            ArchiveSchema.RefuseOtherFiles(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw ArchiveErrors.CannotOpen(path);
        }

        SqliteConnectionStringBuilder settings = new()
        {
            DataSource = path,
            Pooling = false,
            ForeignKeys = true,
            DefaultTimeout = Math.Max(1, (int)Math.Ceiling(patience.TotalSeconds)),
        };
        SqliteConnection connection = new(settings.ConnectionString);
        ArchiveFile archive = new(path, connection);
        try
        {
            archive.Read(open =>
            {
                open.Open();
                ArchiveSchema.Prepare(open, path);
                return true;
            });
            return archive;
        }
        catch
        {
            archive.Dispose();
            throw;
        }
    }
}
