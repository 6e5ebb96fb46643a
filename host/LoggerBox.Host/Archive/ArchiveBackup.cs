using System;
using System.IO;
using System.Linq;

namespace LoggerBox.Host.Archive;

/// <summary>A copy of an archive that others may go on writing: as it was at one moment, read back before it counts.</summary>
public static class ArchiveBackup
{
    /// <param name="place">The copy: a new SQLite file, or a PostgreSQL database that holds nothing yet. What is there already stays as it is.</param>
    /// <exception cref="UserErrorException">Something is there, it cannot be written, or the copy is damaged.</exception>
    public static void Write(ArchiveFile archive, string place)
    {
        if (PlaceWords.IsServer(place))
        {
            IntoServer(archive, place);
        }
        else
        {
            IntoFile(archive, place);
        }
    }

    /// <exception cref="UserErrorException">It is not as it was written.</exception>
    internal static void RefuseDamaged(ArchiveFile copy)
    {
        if (ArchiveCheck.Of(copy).FirstOrDefault() is { } damage)
        {
            throw new UserErrorException($"The copy is damaged ({damage.Where}: {damage.What}) and was not kept. Check the archive itself with `loggerbox archive check`.");
        }
    }

    private static void IntoServer(ArchiveFile archive, string place)
    {
        using ArchiveFile copy = ArchiveFile.Open(place);
        if (copy.Sessions.All().Count > 0 || copy.Jobs.All().Count > 0)
        {
            throw new UserErrorException($"{copy.Path} holds an archive already: nothing was copied; name a database of its own.");
        }

        ArchiveCopy.Run(archive, copy);
    }

    private static void IntoFile(ArchiveFile archive, string path)
    {
        if (Path.Exists(path))
        {
            throw new UserErrorException($"{path} is there already: nothing was copied; name a new file.");
        }

        string beside = path + ".part";
        try
        {
            File.Delete(beside);
            if (archive.CopyItself(beside))
            {
                using ArchiveFile copy = ArchiveFile.OpenExisting(beside);
                RefuseDamaged(copy);
            }
            else
            {
                using ArchiveFile copy = ArchiveFile.Open(beside);
                ArchiveCopy.Run(archive, copy);
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
