using System;
using System.Collections.Generic;
using System.Data.Common;
using System.IO;
using LoggerBox.Host.Archive.Postgres;
using LoggerBox.Host.Archive.Sqlite;

namespace LoggerBox.Host.Archive;

/// <summary>
/// The shop's archive: the record bytes as received, the jobs, and corrections as new rows. One SQLite file, or for several shops a PostgreSQL database.
/// Every change is one transaction that is on the disk when the call returns.
/// </summary>
public sealed class ArchiveFile : IDisposable
{
    private static readonly TimeSpan PatienceWithAnotherProgram = TimeSpan.FromSeconds(5);

    private readonly IArchiveStore store;

    private ArchiveFile(IArchiveStore store)
    {
        this.store = store;
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

    /// <summary>The file's path, or server and database; without the password that may have come with it.</summary>
    public string Path => store.Name;

    public SessionRows Sessions { get; }

    public IncomingSessions Incoming { get; }

    public JobRows Jobs { get; }

    public CorrectionRows Corrections { get; }

    public GateRows Gates { get; }

    public CalibrationRows Calibrations { get; }

    /// <summary>What stands in messages for a place that somebody typed: the place itself, or server and database without a password.</summary>
    /// <exception cref="UserErrorException">It is no address of a PostgreSQL database, though it begins like one.</exception>
    public static string NameOf(string place) => PlaceWords.IsServer(place) ? PostgresAddress.Read(place).Name : place;

    /// <summary>False only for a file that nobody has made yet: a server says itself what it holds.</summary>
    public static bool MayBeThere(string place) => PlaceWords.IsServer(place) || File.Exists(place);

    /// <summary>Where what belongs to an archive is kept on this computer: the file's folder, or for a server the user's data folder.</summary>
    public static string FolderOf(string place) => System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(PlaceWords.IsServer(place) ? DefaultPath : place))!;

    /// <summary>Opens the archive; creates it, with the folder of a file, when there is none.</summary>
    /// <param name="place">A file, or a PostgreSQL database: postgresql://USER@HOST/DATABASE, or Host=...;Database=...</param>
    /// <param name="patience">How long to wait for another program that changes the archive, at least a second.</param>
    /// <exception cref="UserErrorException">It is none, of another program, of a newer schema, cannot be reached or written, or is in use.</exception>
    public static ArchiveFile Open(string place, TimeSpan? patience = null) => Open(place, ArchiveUse.Create, patience);

    /// <summary>Opens an archive that must be there already: a mistyped name makes no empty file.</summary>
    public static ArchiveFile OpenExisting(string place, TimeSpan? patience = null) => Open(place, ArchiveUse.Change, patience);

    /// <summary>Opens an archive to look at it: one that cannot be written (a protected folder, another user's) is read as it is.</summary>
    public static ArchiveFile OpenForReading(string place, TimeSpan? patience = null) => Open(place, ArchiveUse.Look, patience);

    public void Dispose() => store.Dispose();

    /// <summary>Runs queries; what the database refuses becomes a sentence.</summary>
    internal T Read<T>(Func<DbConnection, T> queries)
    {
        try
        {
            return queries(store.Connection);
        }
        catch (DamagedRowException)
        {
            throw ArchiveErrors.DamagedRow(Path);
        }
        catch (Exception error) when (store.Told(error) is { } refusal)
        {
            throw refusal;
        }
    }

    /// <summary>Runs a change that happens wholly or not at all.</summary>
    internal T Change<T>(Func<DbConnection, T> statements) => Read(open =>
    {
        using DbTransaction transaction = store.BeginChange();
        T result = statements(open);
        transaction.Commit();
        return result;
    });

    internal List<string> StructureFaults() => Read(_ => store.StructureFaults());

    /// <summary>Runs queries that all see the same moment, whatever others change meanwhile.</summary>
    internal T Look<T>(Func<DbConnection, T> queries) => Read(open =>
    {
        using DbTransaction transaction = store.BeginLook();
        return queries(open);
    });

    /// <summary>Makes a copy of the database's own, in a new file. False: it has no way to do that.</summary>
    internal bool CopyItself(string path) => Read(_ => store.CopyItself(path));

    private static ArchiveFile Open(string place, ArchiveUse use, TimeSpan? patience) => new(PlaceWords.IsServer(place)
        ? PostgresStore.Open(PostgresAddress.Read(place), use, patience ?? PatienceWithAnotherProgram)
        : SqliteStore.Open(place, use, patience ?? PatienceWithAnotherProgram));
}
