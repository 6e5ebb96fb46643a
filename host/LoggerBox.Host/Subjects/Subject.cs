using System;
using System.Collections.Generic;
using System.Linq;
using System.Security.Cryptography;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Subjects;

/// <summary>What a WHAT on the command line stands for: the recordings, and the work order where there is one.</summary>
public sealed record Subject(string Title, IReadOnlyList<SubjectRecording> Recordings, Job? Job = null)
{
    public JobFacts Facts => Job is null ? new JobFacts() : JobWords.ForTheJudge(Job.Details);

    public IReadOnlyList<RecordedSession> Sessions => [.. Recordings.Select(recording => recording.Session)];

    public ReportDocument Report(Judgement judgement, DateTimeOffset now) => new(
        Title,
        judgement,
        Job is null ? BlankFacts : JobWords.Facts(Job),
        [.. Recordings.Select(recording => recording.ForReport(now))],
        Job is null ? null : ReleaseWords.Of(Job),
        now);

    /// <summary>Without a work order the lines stay open, to be filled in by hand.</summary>
    private static IReadOnlyList<ReportFact> BlankFacts =>
    [
        new("Serial", null), new("Hour meter", null), new("Complaint", null), new("Technician", null), new("Fuel", null), new("Oil level, look", null),
    ];
}

/// <param name="Bytes">The record bytes, as received or as the capture engine wrote them from a trace.</param>
public sealed record SubjectRecording(string Name, byte[] Bytes, RecordedSession Session, ArchivedSession? Row = null)
{
    public ReportRecording ForReport(DateTimeOffset now) => new(
        Name,
        Session,
        Row is not null ? Row.Start?.ToUniversalTime() : StartOfHeader(),
        Row?.Stored.Offset ?? now.Offset,
        Convert.ToHexStringLower(SHA256.HashData(Bytes)));

    private DateTimeOffset? StartOfHeader() =>
        Session.Header.StartUtcSeconds == 0 ? null : DateTimeOffset.FromUnixTimeSeconds(Session.Header.StartUtcSeconds);
}
