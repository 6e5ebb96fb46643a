using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Releasing;
using LoggerBox.Host.Report;

namespace LoggerBox.Host.Subjects;

/// <summary>The first page's facts: what a customer, and a warranty claim, ask for.</summary>
internal static class FrontPage
{
    public static IReadOnlyList<ReportSection> Of(Subject subject, Judgement judgement, DateTimeOffset now) =>
    [
        new ReportSection("Complaint, cause, correction", subject.Job is Job known ? [.. JobWords.Claim(known), .. JobWords.Corrections(known)] : Blank("Complaint", "Cause found", "Correction")),
        new ReportSection("Truck and test", [.. subject.Job is Job job ? JobWords.Truck(job) : Blank("Serial", "Hour meter", "Fuel", "Technician"), .. Recorded(subject, now), Sheet(judgement)]),
        new ReportSection("Conditions", Conditions(subject)),
        new ReportSection("Instrument", [.. InstrumentWords.Of(subject.All, judgement.Unit, now)]),
        new ReportSection("Records behind it", [.. subject.All.Select(recording => new ReportFact(ReportWords.Capital(recording.Short), RoleWords.Before(recording.Role) + recording.Digest))]),
    ];

    private static IEnumerable<ReportFact> Recorded(Subject subject, DateTimeOffset now) => subject.All.Select(recording => new ReportFact(
        "Recorded",
        (subject.All.Count == 1 ? "" : recording.Name + ": ") + ReportWords.Started(recording.ForReport(now)) + Dated(recording)));

    private static string Dated(SubjectRecording recording) => recording.Dated is Correction dated
        ? $", as {dated.Technician} dated it on {JobWords.Moment(dated.Made)}{(dated.Reason.Length == 0 ? "" : ": " + dated.Reason)}"
        : "";

    private static ReportFact Sheet(Judgement judgement) =>
        new("Data sheet", string.Concat(
            judgement.SheetName,
            judgement.Truck.Length == 0 ? "" : $" for {judgement.Truck}",
            judgement.SheetVersion.Length == 0 ? "" : $", version {judgement.SheetVersion}",
            judgement.SheetSource.Length == 0 ? "" : " — " + judgement.SheetSource));

    private static ReportFact[] Conditions(Subject subject)
    {
        ReportFact[] recorded = [.. OilProbe.Facts(subject)];
        IEnumerable<ReportFact> written = subject.Job is Job job ? [.. JobWords.Conditions(job), .. OilRead(job)] : Blank("Oil level, look", OilProbe.Label, "Site altitude, air");

        // What the probe measured leaves no line to fill in by hand.
        return [.. written.Where(fact => fact.Label != OilProbe.Label || fact.Value is not null || recorded.Length == 0), .. recorded];
    }

    // How the oil was read stands where somebody ticked that he read it.
    private static IEnumerable<ReportFact> OilRead(Job job) =>
        job.Release.Gates.Single(state => state.Gate.Code == "oil-read").Tick is GateTick tick ? [new ReportFact("Oil as read", $"{tick.Note} ({tick.By})")] : [];

    private static ReportFact[] Blank(params string[] labels) => Array.ConvertAll(labels, label => new ReportFact(label, null));
}
