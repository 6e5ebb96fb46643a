namespace LoggerBox.Host.Sessions;

/// <param name="HasHeader">False where the header was lost: the session's header is then empty but for its numbers, and no pressure can be told.</param>
public sealed record DecodedSession(RecordedSession Session, SessionDamage Damage, bool HasHeader);
