using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Link;

namespace LoggerBox.Host.Link;

/// <summary>
/// Brings what a logger holds into the archive. Every part that arrives is stored at once; a session is confirmed to the logger only
/// when the archive has all of it. Safe to repeat, and to be cut off anywhere.
/// </summary>
public sealed class SessionDownload
{
    /// <summary>Longer than a day and night of samples: a logger that promises more is broken, and is not believed.</summary>
    public const uint LongestSession = 48 * 1024 * 1024;

    private readonly LoggerConnection connection;
    private readonly ArchiveFile archive;
    private readonly SessionOrigin origin;
    private readonly DateTimeOffset now;
    private readonly Action<DownloadProgress>? progress;

    public SessionDownload(
        LoggerConnection connection, ArchiveFile archive, SessionOrigin origin, DateTimeOffset now, Action<DownloadProgress>? progress = null)
    {
        this.connection = connection;
        this.archive = archive;
        this.origin = origin;
        this.now = now;
        this.progress = progress;
    }

    /// <exception cref="UserErrorException">The line or the logger failed; what had arrived is in the archive.</exception>
    public DownloadResult Run()
    {
        HelloAnswer logger = connection.Hello();
        List<FetchedSession> fetched = [];
        List<string> notes = [];
        foreach (SessionEntry entry in connection.List())
        {
            if (entry.Recording)
            {
                notes.Add($"Session {entry.Number} is still being recorded: fetch again when it has ended.");
            }
            else if (entry.Length == 0 || entry.Length > LongestSession)
            {
                notes.Add($"Session {entry.Number} was left on the logger: it claims a length of {entry.Length} bytes, which no session has.");
            }
            else
            {
                fetched.Add(Fetch(new SessionIdentity(logger.LoggerId, entry.BootCount, entry.Number), entry.Length));
            }
        }

        return new DownloadResult(logger, fetched, notes);
    }

    private FetchedSession Fetch(SessionIdentity identity, uint length)
    {
        foreach (ArchivedSession row in archive.Sessions.Complete(identity, length))
        {
            if (Agrees(row, out bool confirmed))
            {
                return new FetchedSession(row.Id, identity, IsNew: false, confirmed);
            }
        }

        for (int attempt = 0; attempt < 2; attempt++)
        {
            ArchivedSession row = Receive(identity, length);
            if (Agrees(row, out bool confirmed))
            {
                return new FetchedSession(row.Id, identity, IsNew: true, confirmed);
            }

            // The parts of an earlier, cut download may be another session's of the same numbers: once more from the beginning.
            archive.Incoming.SetAside(row.Id);
        }

        throw LinkErrors.DoesNotAgree(connection.Port, identity.SessionNumber);
    }

    private ArchivedSession Receive(SessionIdentity identity, uint length)
    {
        string id = archive.Incoming.Begin(identity, length, origin, connection.Port, now);
        IReadOnlyList<ByteRange> holes = archive.Incoming.Missing(id);
        if (holes.Count > 0)
        {
            long received = length - holes.Sum(hole => hole.Length);
            using ArrivingParts parts = new(archive, id);
            connection.Fetch(identity.SessionNumber, holes, data =>
            {
                parts.Add(data.Offset, data.Payload.AsSpan(0, data.Length));
                received += data.Length;
                progress?.Invoke(new DownloadProgress(identity.SessionNumber, Math.Min(received, length), length));
            });
        }

        return archive.Incoming.Complete(id);
    }

    /// <summary>Tells the logger what the archive has. Not confirmed though it agrees, as far as can be told: the logger is recording just now.</summary>
    private bool Agrees(ArchivedSession row, out bool confirmed)
    {
        RefusalReason? refusal = connection.Confirm(row.Identity.SessionNumber, (uint)row.Length, row.Crc ?? 0);
        confirmed = refusal is null;
        return refusal switch
        {
            null or RefusalReason.Recording => true,
            RefusalReason.DoesNotAgree => false,
            RefusalReason other => throw LinkErrors.Refused(connection.Port, MessageCode.Confirm, other),
        };
    }
}

/// <summary>How far a download is; bytes.</summary>
public sealed record DownloadProgress(uint SessionNumber, long Received, long Length);

/// <param name="Id">Its id in the archive.</param>
/// <param name="IsNew">False where the archive had it already.</param>
/// <param name="Confirmed">The logger knows that it is stored.</param>
public sealed record FetchedSession(string Id, SessionIdentity Identity, bool IsNew, bool Confirmed);

/// <param name="Notes">What was left on the logger, and why.</param>
public sealed record DownloadResult(HelloAnswer Logger, IReadOnlyList<FetchedSession> Sessions, IReadOnlyList<string> Notes);
