namespace LoggerBox.Host.Sessions;

/// <param name="HasHeader">False where the header was lost: the session's header is then empty but for its numbers, and no pressure can be told.</param>
/// <param name="SampleSets">How many there are, kept or not.</param>
/// <param name="LastSampleMicroseconds">The latest of their times; null where there are none.</param>
public sealed record DecodedSession(RecordedSession Session, SessionDamage Damage, bool HasHeader, long SampleSets, long? LastSampleMicroseconds);
