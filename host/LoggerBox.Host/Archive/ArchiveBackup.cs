using System;
using System.IO;
using System.Linq;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Host.Archive;

/// <summary>A copy of an archive that others may go on writing: as it was at one moment, read back before it gets its name.</summary>
public static class ArchiveBackup
{
    /// <param name="path">The copy. A file that is there already stays as it is.</param>
    /// <exception cref="UserErrorException">The file is there, cannot be written, or the copy is damaged.</exception>
    public static void Write(ArchiveFile archive, string path)
    {
        if (Path.Exists(path))
        {
            throw new UserErrorException($"{path} is there already: nothing was copied; name a new file.");
        }

        string beside = path + ".part";
        try
        {
            File.Delete(beside);
            Copy(archive, beside);
            using (ArchiveFile copy = ArchiveFile.OpenExisting(beside))
            {
                if (ArchiveCheck.Of(copy).FirstOrDefault() is { } damage)
                {
                    throw new UserErrorException($"The copy is damaged ({damage.Where}: {damage.What}) and was not kept. Check the archive itself with `loggerbox archive check`.");
                }
            }

            File.Move(beside, path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserErrorException($"{path} could not be written ({error.Message.TrimEnd('.')}). Name a folder that exists and that you may write to.");
        }
        finally
        {
            foreach (string left in (string[])[beside, beside + "-wal", beside + "-shm"])
            {
                Remove(left);
            }
        }
    }

    // Page by page, by SQLite's own backup: it begins anew where another program writes meanwhile.
    private static void Copy(ArchiveFile archive, string path) => archive.Read(open =>
    {
        using SqliteConnection copy = new(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ConnectionString);
        copy.Open();
        open.BackupDatabase(copy);
        return true;
    });

    private static void Remove(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // What cannot be removed was not made: its folder is not there, or not ours.
        }
    }
}
