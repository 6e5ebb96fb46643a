using System;
using System.Collections.Generic;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Report;

/// <summary>Everything that a printed report says; whoever renders it looks nothing up. The first page is the customer's, the rest for the file.</summary>
/// <param name="Title">Job, session or file that was judged.</param>
/// <param name="Release">Whether the truck may go back to work; null where there is no work order.</param>
/// <param name="Front">The first page's facts, section by section, in the order in which they are read.</param>
/// <param name="Comparison">Before and after the repair; null where the job has not both.</param>
/// <param name="Made">When the report was made, with the shop's offset.</param>
public sealed record ReportDocument(
    string Title,
    Judgement Judgement,
    ReleaseNote? Release,
    IReadOnlyList<ReportSection> Front,
    ReportComparison? Comparison,
    IReadOnlyList<ReportRecording> Recordings,
    DateTimeOffset Made)
{
    /// <summary>Name and serial as the work order has them; empty where there is no work order.</summary>
    public string Truck { get; init; } = "";
}

public sealed record ReportSection(string Heading, IReadOnlyList<ReportFact> Facts);

/// <summary>A fact without a value is left blank, to fill in by hand.</summary>
/// <param name="IsLoud">Whoever reads the page must not miss it.</param>
public sealed record ReportFact(string Label, string? Value, bool IsLoud = false);

/// <summary>One recorded session behind the judgement.</summary>
/// <param name="StartedUtc">Null: the logger had no valid clock and nobody dated the session.</param>
/// <param name="ShopOffset">Offset of the shop's clock from UTC when it was fetched.</param>
public sealed record ReportRecording(string Name, RecordedSession Session, DateTimeOffset? StartedUtc, TimeSpan ShopOffset);
