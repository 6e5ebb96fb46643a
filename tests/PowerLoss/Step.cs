namespace LoggerBox.PowerLoss;

/// <summary>
/// One write of a recording: what is promised while it lasts and when it has returned, and where its bytes belong. Where they belong is
/// only used to say what a page that is lost afterwards may cost.
/// </summary>
/// <param name="Note">The session that a note confirms; 0 where the write is no note.</param>
public sealed record Step(
    CardWrite Write, Ledger During, Ledger After, uint Session, int SessionOffset, int SessionEnd, uint Note, uint Generation, ushort BootCount);
