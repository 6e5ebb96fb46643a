using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Archive;

/// <summary>
/// The one way of a recorded session into the archive, whether it comes by cable or on a card. Every part is stored as it comes; what is
/// here already, by whichever way, is not read again, but compared. Safe to repeat, and to be cut off anywhere.
/// </summary>
public sealed class SessionIntake
{
    /// <summary>Longer than a day and night of samples: what promises more is broken, and is not believed.</summary>
    public const uint LongestSession = 48 * 1024 * 1024;

    private readonly ArchiveFile archive;
    private readonly ISessionSource source;
    private readonly SessionOrigin origin;
    private readonly DateTimeOffset now;
    private readonly Action<IntakeProgress>? progress;

    public SessionIntake(ArchiveFile archive, ISessionSource source, SessionOrigin origin, DateTimeOffset now, Action<IntakeProgress>? progress = null)
    {
        this.archive = archive;
        this.source = source;
        this.origin = origin;
        this.now = now;
        this.progress = progress;
    }

    /// <summary>The sessions that were taken, in the order of taking.</summary>
    public List<TakenSession> Sessions { get; } = [];

    /// <summary>What a person should know: each a whole sentence.</summary>
    public List<string> Notes { get; } = [];

    /// <summary>Brings one session into the archive, or finds it there.</summary>
    /// <exception cref="UserErrorException">The source failed; what had come is in the archive.</exception>
    public void Take(SessionIdentity identity, uint length)
    {
        List<ArchivedSession> others = [];
        foreach (ArchivedSession row in archive.Sessions.Complete(identity, length))
        {
            Agreement agreement = Compare(row);
            if (agreement != Agreement.Other)
            {
                Sessions.Add(new TakenSession(row.Id, identity, IsNew: false, agreement == Agreement.Confirmed));
                return;
            }

            others.Add(row);
        }

        TakenSession taken = Receive(identity, length);
        Sessions.Add(taken);
        Notes.AddRange(others.Select(row => Conflict(identity, row, taken)));
    }

    private TakenSession Receive(SessionIdentity identity, uint length)
    {
        for (int attempt = 0; attempt < 2; attempt++)
        {
            ArchivedSession row = Fill(identity, length, out bool resumed);
            Agreement agreement = Compare(row);
            if (agreement != Agreement.Other)
            {
                return new TakenSession(row.Id, identity, IsNew: true, agreement == Agreement.Confirmed);
            }

            // The parts of an earlier, cut download may be another session's of the same numbers: once more from the beginning.
            archive.Incoming.SetAside(row.Id);
            if (resumed)
            {
                Notes.Add($"What had come of session {identity.SessionNumber} earlier does not agree with {source.Name}: it was put aside, and the session was read from its beginning.");
            }
        }

        throw ArchiveErrors.DoesNotAgree(source.Name, identity.SessionNumber);
    }

    private ArchivedSession Fill(SessionIdentity identity, uint length, out bool resumed)
    {
        string id = archive.Incoming.Begin(identity, length, origin, source.Name, now);
        IReadOnlyList<ByteRange> holes = archive.Incoming.Missing(id);
        long received = length - holes.Sum(hole => hole.Length);
        resumed = received > 0;
        using ArrivingParts parts = new(archive, id);
        if (holes.Count > 0)
        {
            source.Read(identity.SessionNumber, holes, (offset, bytes) =>
            {
                parts.Add(offset, bytes);
                received += bytes.Length;
                progress?.Invoke(new IntakeProgress(identity.SessionNumber, Math.Min(received, length), length));
            });
        }

        return parts.Complete();
    }

    private Agreement Compare(ArchivedSession row) => source.Compare(row, () => archive.Sessions.BytesAsTheyAre(row.Id));

    private string Conflict(SessionIdentity identity, ArchivedSession row, TakenSession taken) =>
        $"Session {identity.SessionNumber} was in the archive as {row.Id} with other bytes than {source.Name} holds: both are kept, the one from {source.Name} as {taken.Id}.";
}

/// <summary>How far the session that is coming is; bytes.</summary>
public sealed record IntakeProgress(uint SessionNumber, long Received, long Length);

/// <param name="Id">Its id in the archive.</param>
/// <param name="IsNew">False where the archive had it already.</param>
/// <param name="Confirmed">The logger knows that it is stored.</param>
public sealed record TakenSession(string Id, SessionIdentity Identity, bool IsNew, bool Confirmed);
