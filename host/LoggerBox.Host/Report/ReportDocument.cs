using System;
using System.Collections.Generic;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Report;

/// <summary>Everything that a printed report says; whoever renders it looks nothing up.</summary>
/// <param name="Title">Job, session or file that was judged.</param>
/// <param name="Facts">The work order, in the order it is to be read; a fact without a value is left blank to fill in by hand.</param>
/// <param name="Release">Whether the truck may go back to work; null where there is no work order.</param>
/// <param name="Made">When the report was made, with the shop's offset.</param>
public sealed record ReportDocument(
    string Title,
    Judgement Judgement,
    IReadOnlyList<ReportFact> Facts,
    IReadOnlyList<ReportRecording> Recordings,
    ReleaseNote? Release,
    DateTimeOffset Made);

public sealed record ReportFact(string Label, string? Value);

/// <summary>One recorded session behind the judgement.</summary>
/// <param name="StartedUtc">Null: the logger had no valid clock and nobody dated the session.</param>
/// <param name="ShopOffset">Offset of the shop's clock from UTC when it was fetched.</param>
/// <param name="Fingerprint">SHA-256 of the record bytes as received, lower-case hexadecimal.</param>
public sealed record ReportRecording(
    string Name,
    RecordedSession Session,
    DateTimeOffset? StartedUtc,
    TimeSpan ShopOffset,
    string Fingerprint);
