using System;
using System.Collections.Generic;
using System.Globalization;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;

namespace LoggerBox.Host.Subjects;

/// <summary>What a work order says, for the eye and for the judge.</summary>
public static class JobWords
{
    public static IReadOnlyList<ReportFact> Facts(Job job)
    {
        JobDetails details = job.Details;
        return
        [
            new ReportFact("Truck", details.Truck),
            new ReportFact("Serial", details.Serial),
            new ReportFact("Hour meter", Number(details.HourMeter, "h")),
            new ReportFact("Fuel", details.Fuel),
            new ReportFact("Complaint", details.Complaint),
            .. job.Cause.Length > 0 ? (ReportFact[])[new ReportFact("Cause found", job.Cause)] : [],
            .. job.Correction.Length > 0 ? (ReportFact[])[new ReportFact("Correction", job.Correction)] : [],
            new ReportFact("Technician", details.Technician),
            new ReportFact("Site altitude", Number(details.AltitudeMetres, "m")),
            new ReportFact("Intake air", Number(details.AirCelsius, "°C")),
            new ReportFact("Oil level", details.OilLevel),
            new ReportFact("Oil look", details.OilLook),
            new ReportFact("Oil temperature", Oil(details)),
        ];
    }

    /// <summary>What the archive adds to it; the report says these in places of their own.</summary>
    public static IReadOnlyList<ReportFact> Bookkeeping(Job job) =>
    [
        new ReportFact("Data sheet", job.Details.SheetName),
        .. Members("Before the repair", job.SessionIdsOf(SessionRole.Before)),
        .. Members("After the repair", job.SessionIdsOf(SessionRole.After)),
        new ReportFact("Opened", Moment(job.Opened)),
        new ReportFact("Closed", job.Closed is DateTimeOffset closed ? Moment(closed) : null),
    ];

    public static JobFacts ForTheJudge(JobDetails details) => new(
        Written(details.Fuel), details.AltitudeMetres, details.AirCelsius, details.OilCelsius, Written(details.OilLevel), Written(details.OilLook));

    public static string Moment(DateTimeOffset time) => time.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture);

    private static IEnumerable<ReportFact> Members(string label, IReadOnlyList<string> ids) =>
        ids.Count > 0 ? [new ReportFact(label, string.Join(' ', ids))] : [];

    private static string? Oil(JobDetails details) =>
        details.OilCelsius is null || details.OilRead.Length == 0 ? Number(details.OilCelsius, "°C") : $"{Number(details.OilCelsius, "°C")} ({details.OilRead})";

    private static string? Number(double? value, string unit) => value is double number ? number.ToString("0.#", CultureInfo.InvariantCulture) + " " + unit : null;

    private static string? Written(string text) => text.Length == 0 ? null : text;
}
