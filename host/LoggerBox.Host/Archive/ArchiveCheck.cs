using System.Collections.Generic;
using LoggerBox.Host.Sessions;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Host.Archive;

/// <summary>One place of an archive that is not as it was written.</summary>
/// <param name="Where">A session or job by its id, or the file.</param>
/// <param name="What">A sentence: what is wrong, and what to do.</param>
public sealed record ArchiveDamage(string Where, string What);

/// <summary>Reads all that an archive holds and compares it with what was noted when it came: the file's own structure, every session's CRC, every record and sample set.</summary>
public static class ArchiveCheck
{
    // More than anybody reads; a file with so many is restored, not mended.
    private const int MostStructureFaults = 20;

    /// <summary>Each damage as it is found; none where all is sound. Sessions that are still arriving are whole as far as they are here.</summary>
    public static IEnumerable<ArchiveDamage> Of(ArchiveFile archive)
    {
        foreach (string fault in archive.Read(Structure))
        {
            yield return new ArchiveDamage("file", $"{fault}: stop using the archive and restore it from a copy.");
        }

        foreach (ArchivedSession session in archive.Sessions.All())
        {
            if (session.Complete && Damage(archive, session) is string what)
            {
                yield return new ArchiveDamage(session.Id, what);
            }
        }
    }

    private static List<string> Structure(SqliteConnection open)
    {
        List<string> faults = open.Rows($"PRAGMA integrity_check({MostStructureFaults})", row => row.GetString(0));
        faults.RemoveAll(fault => fault == "ok");
        faults.AddRange(open.Rows("PRAGMA foreign_key_check", row => $"a row of {row.GetString(0)} belongs to nothing"));
        return faults;
    }

    private static string? Damage(ArchiveFile archive, ArchivedSession session)
    {
        try
        {
            SessionDamage found = SessionDecoder.Decode(archive.Sessions.Bytes(session.Id)).Damage;
            return found == session.Damage ? null : $"its records read otherwise than when it came ({found.Records} damaged, then {session.Damage.Records}): restore the archive from a copy.";
        }
        catch (UserErrorException damage)
        {
            return damage.Message;
        }
    }
}
