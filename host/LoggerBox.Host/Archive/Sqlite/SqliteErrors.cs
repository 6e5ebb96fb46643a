using System.IO;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Host.Archive.Sqlite;

/// <summary>What can be wrong with an archive's file, each as a sentence with its name and the next thing to do.</summary>
internal static class SqliteErrors
{
    // SQLite's primary result codes, https://sqlite.org/rescode.html
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int InputOutput = 10;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpenFile = 14;
    private const int NotADatabase = 26;

    public static UserErrorException NoFile(string path) =>
        new($"There is no archive at {path}: fetch or import a session first, or name another file with --archive.");

    public static UserErrorException FolderMissing(string path, string reason) =>
        new($"The folder of the archive {path} cannot be created ({reason.TrimEnd('.')}): name another file with --archive.");

    public static UserErrorException NotSqlite(string path) =>
        new($"{path} is no SQLite file: nothing was changed; name another file with --archive.");

    public static UserErrorException CannotOpen(string path) =>
        new($"The archive {path} cannot be opened: check that it is a file in a folder that you may write, or name another with --archive.");

    public static UserErrorException CannotWrite(string path) =>
        new($"The archive {path} cannot be written: nothing was changed; check the permissions of file and folder, or name another file with --archive. It can still be looked at, judged and exported.");

    public static UserErrorException NotClosedInOrder(string path) =>
        new($"The archive {path} was not closed in order and cannot be written here: copy it, and {Path.GetFileName(path)}-wal beside it, to a folder that you may write.");

    public static UserErrorException Older(string path) =>
        new($"The archive {path} was written by an older program and cannot be brought up to date here: copy it to a folder that you may write.");

    public static UserErrorException OfAnotherProgram(string path) =>
        new($"{path} is an SQLite file of another program, not an archive: nothing was changed; name another file with --archive.");

    /// <summary>The file, or the folder in which SQLite keeps its log, cannot be written.</summary>
    public static bool MeansWriteProtected(SqliteException error) => error.SqliteErrorCode is ReadOnly or CannotOpenFile;

    public static UserErrorException Of(string path, SqliteException error) => error.SqliteErrorCode switch
    {
        NotADatabase => NotSqlite(path),
        CannotOpenFile => File.Exists(path) ? CannotWrite(path) : CannotOpen(path),
        ReadOnly => CannotWrite(path),
        _ => new UserErrorException(Text(path, error)),
    };

    private static string Text(string path, SqliteException error) => error.SqliteErrorCode switch
    {
        Corrupt => $"The archive {path} is damaged ({error.Message}): stop using it and restore it from a copy.",
        Busy or Locked => $"The archive {path} is in use by another program: close that program and try again.",
        Full => $"There is no room left on the disk of the archive {path}: free some and try again; nothing was half written.",
        InputOutput => $"The disk of the archive {path} failed ({error.Message}): check the disk and try again.",
        _ => $"The archive {path} refused the operation ({error.Message}): keep a copy of the file and try again.",
    };
}
