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
        new ReportSection("Complaint, cause, correction", subject.Job is Job known ? JobWords.Claim(known) : Blank("Complaint", "Cause found", "Correction")),
        new ReportSection("Truck and test", [.. subject.Job is Job job ? JobWords.Truck(job) : Blank("Serial", "Hour meter", "Fuel", "Technician"), .. Recorded(subject, now), Sheet(judgement)]),
        new ReportSection("Conditions", subject.Job is Job of ? [.. JobWords.Conditions(of), .. OilRead(of)] : Blank("Oil level, look", "Oil temperature", "Site altitude, air")),
        new ReportSection("Instrument", [.. InstrumentWords.Of(subject.Recordings, judgement.Unit, now)]),
        new ReportSection("Records behind it", [.. subject.Recordings.Select(recording => new ReportFact(ReportWords.Capital(recording.Name), recording.Digest))]),
    ];

    private static IEnumerable<ReportFact> Recorded(Subject subject, DateTimeOffset now) => subject.Recordings.Select(recording => new ReportFact(
        "Recorded",
        (subject.Recordings.Count == 1 ? "" : recording.Name + ": ") + ReportWords.Started(recording.ForReport(now))));

    private static ReportFact Sheet(Judgement judgement) =>
        new("Data sheet", judgement.SheetName + (judgement.SheetSource.Length == 0 ? "" : " — " + judgement.SheetSource));

    // How the oil was read stands where somebody ticked that he read it.
    private static IEnumerable<ReportFact> OilRead(Job job) =>
        job.Release.Gates.Single(state => state.Gate.Code == "oil-read").Tick is GateTick tick ? [new ReportFact("Oil as read", $"{tick.Note} ({tick.By})")] : [];

    private static ReportFact[] Blank(params string[] labels) => Array.ConvertAll(labels, label => new ReportFact(label, null));
}
