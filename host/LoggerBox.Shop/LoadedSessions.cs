using System.Collections.Generic;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using LoggerBox.Host.Archive;
using LoggerBox.Shop.Traces;

namespace LoggerBox.Shop;

/// <summary>The sessions that were looked at last, decoded: a page and its pictures ask for the same one many times, and its bytes never change.</summary>
internal sealed class LoadedSessions
{
    // Some 24 bytes each: a shop PC keeps this much without noticing.
    private const long MostSampleSets = 4_000_000;

    private readonly Lock gate = new();
    private readonly LinkedList<Kept> kept = [];

    /// <summary>A session as the archive has it now: its row is read each time, its records once.</summary>
    public LoadedSession Load(ArchiveFile file, string id) => Find(file, id).Session;

    /// <summary>What pictures of a session are drawn from.</summary>
    public (LoadedSession Session, Pyramid Pyramid) Picture(ArchiveFile file, string id)
    {
        Kept found = Find(file, id);
        return (found.Session, found.Pyramid.Result);
    }

    private Kept Find(ArchiveFile file, string id)
    {
        ArchivedSession row = file.Sessions.Find(id);
        lock (gate)
        {
            Kept? known = kept.FirstOrDefault(one => one.Session.Row.Id == row.Id && one.Session.Row.Crc == row.Crc && row.Complete);
            if (known is not null)
            {
                kept.Remove(known);
            }

            Kept current = known is null ? new Kept(file.Sessions.Load(id)) : known with { Session = known.Session with { Row = row } };
            kept.AddFirst(current);
            while (kept.Count > 1 && kept.Sum(one => one.Session.Row.SampleSets) > MostSampleSets)
            {
                kept.RemoveLast();
            }

            return current;
        }
    }

    private sealed record Kept(LoadedSession Session)
    {
        /// <summary>Built while the session is judged: its picture is wanted next.</summary>
        public Task<Pyramid> Pyramid { get; init; } = Task.Run(() => new Pyramid(Session.Session.Samples));
    }
}
