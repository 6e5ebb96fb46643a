using System;

namespace LoggerBox.Host.Releasing;

/// <summary>One row of a job's gates: ticked or withdrawn, never edited.</summary>
/// <param name="Gate">Code of the gate, or <see cref="Releasing.Gate.ReleaseCode"/>; one of a later program is kept as it is.</param>
/// <param name="Withdrawn">The tick before it no longer counts.</param>
/// <param name="By">Who answers for it.</param>
public sealed record GateTick(string Gate, bool Withdrawn, string By, string Note, DateTimeOffset Made);
