using System;
using System.Collections.Generic;
using System.Linq;
using System.Security.Cryptography;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Subjects;

/// <summary>What a WHAT on the command line stands for: the recordings that are judged, and the work order where there is one.</summary>
public sealed record Subject(string Title, IReadOnlyList<SubjectRecording> Recordings, Job? Job = null)
{
    /// <summary>Recorded before the repair, where <see cref="Recordings"/> are of after it: only compared with, never judged with them.</summary>
    public IReadOnlyList<SubjectRecording> Before { get; init; } = [];

    /// <summary>What a judgement of it has to say beside what the records say.</summary>
    public IReadOnlyList<ValidityNote> Notes { get; init; } = [];

    public JobFacts Facts => Job is null ? new JobFacts() : JobWords.ForTheJudge(Job.Details);

    public IReadOnlyList<RecordedSession> Sessions => [.. Recordings.Select(recording => recording.Session)];

    /// <summary>In the order of the work.</summary>
    public IReadOnlyList<SubjectRecording> All => [.. Before, .. Recordings];

    public Judgement Judged(DataSheet sheet, PressureUnit unit)
    {
        Judgement judgement = Judge.Of(Sessions, sheet, Facts, unit);
        return Notes.Count == 0 ? judgement : judgement with { Validity = [.. Notes, .. judgement.Validity] };
    }

    /// <param name="sheet">By which it was judged, and before and after are judged each by itself.</param>
    public ReportDocument Report(Judgement judgement, DataSheet sheet, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(judgement);
        return new ReportDocument(
            Title,
            judgement,
            Job is null ? null : ReleaseWords.Of(Job),
            FrontPage.Of(this, judgement, now),
            RepairComparison.Of(this, judgement, sheet),
            [.. Recordings.Select(recording => recording.ForReport(now))],
            now)
        {
            Truck = Job is null ? "" : JobWords.Name(Job, judgement.Truck),
        };
    }
}

/// <param name="Bytes">The record bytes, as received or as the capture engine wrote them from a trace.</param>
/// <param name="Calibrations">Of its logger, oldest first, as far as the archive knows them.</param>
public sealed record SubjectRecording(string Name, byte[] Bytes, RecordedSession Session, ArchivedSession? Row, IReadOnlyList<ArchivedCalibration> Calibrations)
{
    public SubjectRecording(string name, byte[] bytes, RecordedSession session)
        : this(name, bytes, session, null, [])
    {
    }

    /// <summary>What it is to its job.</summary>
    public SessionRole Role { get; init; }

    /// <summary>Its name without its role.</summary>
    public string Short => Row is null ? Name : "session " + Row.Id;

    /// <summary>Who said when it was recorded; null: the logger's clock did, or nobody.</summary>
    public Correction? Dated { get; init; }

    /// <summary>By which anybody can tell that a copy of the records is these.</summary>
    public string Digest =>
        FormattableString.Invariant($"{Bytes.Length} bytes, CRC-32C {Castagnoli.Of(Bytes):x8}, SHA-256 {Convert.ToHexStringLower(SHA256.HashData(Bytes))}");

    public ReportRecording ForReport(DateTimeOffset now) => new(
        Name,
        Session,
        Row is not null ? Row.Start?.ToUniversalTime() : StartOfHeader(),
        Row?.Stored.Offset ?? now.Offset);

    private DateTimeOffset? StartOfHeader() =>
        Session.Header.StartUtcSeconds == 0 ? null : DateTimeOffset.FromUnixTimeSeconds(Session.Header.StartUtcSeconds);
}
