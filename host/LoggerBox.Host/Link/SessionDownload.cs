using System;
using System.Collections.Generic;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Link;

namespace LoggerBox.Host.Link;

/// <summary>
/// Brings what a logger holds into the archive. Every part that arrives is stored at once; a session is confirmed to the logger only
/// when the archive has all of it. Safe to repeat, and to be cut off anywhere.
/// </summary>
public sealed class SessionDownload : ISessionSource
{
    private readonly LoggerConnection connection;
    private readonly SessionIntake intake;

    public SessionDownload(
        LoggerConnection connection, ArchiveFile archive, SessionOrigin origin, DateTimeOffset now, Action<IntakeProgress>? progress = null)
    {
        this.connection = connection;
        intake = new SessionIntake(archive, this, origin, now, progress);
    }

    public string Name => connection.Port;

    /// <summary>What there is to say so far, after a failure too.</summary>
    public IReadOnlyList<string> Notes => intake.Notes;

    /// <exception cref="UserErrorException">The line or the logger failed; what had arrived is in the archive.</exception>
    public DownloadResult Run()
    {
        HelloAnswer logger = connection.Hello();
        foreach (SessionEntry entry in connection.List())
        {
            if (entry.Recording)
            {
                intake.Notes.Add($"Session {entry.Number} is still being recorded: fetch again when it has ended.");
            }
            else if (entry.Length == 0 || entry.Length > SessionIntake.LongestSession)
            {
                intake.Notes.Add($"Session {entry.Number} was left on the logger: it claims a length of {entry.Length} bytes, which no session has.");
            }
            else
            {
                intake.Take(new SessionIdentity(logger.LoggerId, entry.BootCount, entry.Number), entry.Length);
            }
        }

        return new DownloadResult(intake.Sessions, intake.Notes);
    }

    public void Read(uint session, IReadOnlyList<ByteRange> wanted, Action<long, ReadOnlySpan<byte>> take) =>
        connection.Fetch(session, wanted, data => take(data.Offset, data.Payload.AsSpan(0, data.Length)));

    /// <summary>
    /// Tells the logger what the archive has. Not confirmed though it agrees, as far as can be told: the logger is recording just now.
    /// </summary>
    public Agreement Compare(ArchivedSession row, Func<byte[]> content) =>
        connection.Confirm(row.Identity.SessionNumber, (uint)row.Length, row.Crc ?? 0) switch
        {
            null => Agreement.Confirmed,
            RefusalReason.Recording => Agreement.Same,
            RefusalReason.DoesNotAgree => Agreement.Other,
            RefusalReason other => throw LinkErrors.Refused(connection.Port, MessageCode.Confirm, other),
        };
}

/// <param name="Notes">What was left on the logger, and why; what did not agree.</param>
public sealed record DownloadResult(IReadOnlyList<TakenSession> Sessions, IReadOnlyList<string> Notes);
