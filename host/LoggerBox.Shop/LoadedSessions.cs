using System.Threading.Tasks;
using LoggerBox.Host.Archive;
using LoggerBox.Shop.Traces;

namespace LoggerBox.Shop;

/// <summary>The sessions that were looked at last, decoded: a page and its pictures ask for the same one many times, and its bytes never change.</summary>
internal sealed class LoadedSessions
{
    /// <summary>Some 24 bytes each, records and pictures together: a shop PC keeps this much without noticing.</summary>
    public const long MostSampleSets = 4_000_000;

    private readonly Recent<Content, Kept> recent = new(content => content.SampleSets, MostSampleSets);

    /// <summary>A session as the archive has it now: its row is read each time, its records once.</summary>
    public LoadedSession Load(ArchiveFile file, string id) => Find(file, id).Session;

    /// <summary>What pictures of a session are drawn from.</summary>
    public (LoadedSession Session, Pyramid Pyramid) Picture(ArchiveFile file, string id)
    {
        Kept found = Find(file, id);
        return (found.Session, found.Pyramid.Result);
    }

    public bool Holds(ArchiveFile file, string id) => recent.Holds(Content.Of(file.Sessions.Find(id)));

    private Kept Find(ArchiveFile file, string id)
    {
        ArchivedSession row = file.Sessions.Find(id);
        Kept known = recent.Find(Content.Of(row), () => new Kept(file.Sessions.Load(id)));
        return known with { Session = known.Session with { Row = row } };
    }

    private sealed record Content(string Id, uint? Crc, long SampleSets)
    {
        public static Content Of(ArchivedSession row) => new(row.Id, row.Crc, row.SampleSets);
    }

    private sealed record Kept(LoadedSession Session)
    {
        /// <summary>Built while the session is judged: its picture is wanted next.</summary>
        public Task<Pyramid> Pyramid { get; init; } = Task.Run(() => new Pyramid(Session.Session));
    }
}
