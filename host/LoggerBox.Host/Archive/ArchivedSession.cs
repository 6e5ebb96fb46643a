using System;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Archive;

/// <summary>Which session of which logger: the same three numbers on the logger, on the wire and here.</summary>
public sealed record SessionIdentity(uint LoggerId, ushort BootCount, uint SessionNumber);

public enum SessionOrigin
{
    Fetched,
    Imported,
    Simulated,
}

/// <summary>A session's row. What the records tell is known once all have arrived.</summary>
/// <param name="Id">S1, S2, ...</param>
/// <param name="Length">Bytes that the session has; <paramref name="Received"/> of them are here.</param>
/// <param name="Source">The port, or the file's name without folder.</param>
/// <param name="Crc">CRC-32C of all bytes; null until all are here.</param>
/// <param name="Start">Null: the logger had no valid clock and nobody has dated the session.</param>
/// <param name="Ended">Closed in order; false where it was cut (battery off, card pulled).</param>
/// <param name="StepsCaptured">Bit n set: step n was captured.</param>
public sealed record ArchivedSession(
    string Id,
    SessionIdentity Identity,
    long Length,
    SessionOrigin Origin,
    string Source,
    DateTimeOffset Stored,
    bool Complete,
    long Received,
    uint? Crc,
    DateTimeOffset? Start,
    TimeSpan Duration,
    long SampleSets,
    long Holds,
    uint StepsCaptured,
    bool Ended,
    string PlanName,
    SessionDamage Damage);

/// <summary>A whole session: its row, its bytes as received, its records.</summary>
public sealed record LoadedSession(ArchivedSession Row, byte[] Bytes, RecordedSession Session);

/// <param name="IsNew">False where the archive had the session already.</param>
public sealed record AddedSession(string Id, bool IsNew);
