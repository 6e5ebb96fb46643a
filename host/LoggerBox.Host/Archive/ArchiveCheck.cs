using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Archive;

/// <summary>One place of an archive that is not as it was written.</summary>
/// <param name="Where">A session or job by its id, or the file.</param>
/// <param name="What">A sentence: what is wrong, and what to do.</param>
public sealed record ArchiveDamage(string Where, string What);

/// <summary>Reads all that an archive holds and compares it with what was noted when it came: the file's own structure, every session's CRC, every record and sample set.</summary>
public static class ArchiveCheck
{
    /// <summary>Each damage as it is found; none where all is sound. Sessions that are still arriving are whole as far as they are here.</summary>
    /// <param name="read">Told how many bytes of sessions are read, of how many.</param>
    public static IEnumerable<ArchiveDamage> Of(ArchiveFile archive, Action<long, long>? read = null)
    {
        IReadOnlyList<ArchivedSession> sessions = archive.Sessions.All();
        long whole = sessions.Sum(session => session.Received);
        long done = 0;
        read?.Invoke(done, whole);
        foreach (string fault in archive.StructureFaults())
        {
            yield return new ArchiveDamage("file", $"{fault}: stop using the archive and restore it from a copy.");
        }

        foreach (ArchivedSession session in sessions)
        {
            if (session.Complete && Damage(archive, session) is string what)
            {
                yield return new ArchiveDamage(session.Id, what);
            }

            read?.Invoke(done += session.Received, whole);
        }
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
