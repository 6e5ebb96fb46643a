using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;

namespace LoggerBox.Host.Subjects;

/// <summary>What a work order says, for the eye and for the judge.</summary>
public static class JobWords
{
    public static IReadOnlyList<ReportFact> Facts(Job job) => [.. Truck(job), .. Claim(job), .. Conditions(job)];

    /// <summary>What a warranty claim wants to know.</summary>
    public static IReadOnlyList<ReportFact> Claim(Job job) =>
        [new ReportFact("Complaint", job.Details.Complaint), new ReportFact("Cause found", job.Cause), new ReportFact("Correction", job.Correction)];

    public static IReadOnlyList<ReportFact> Truck(Job job) =>
    [
        new ReportFact("Truck", job.Details.Truck),
        new ReportFact("Serial", job.Details.Serial),
        new ReportFact("Hour meter", Number(job.Details.HourMeter, "h")),
        new ReportFact("Fuel", job.Details.Fuel),
        new ReportFact("Technician", job.Details.Technician),
    ];

    public static IReadOnlyList<ReportFact> Conditions(Job job) =>
    [
        new ReportFact("Oil level", job.Details.OilLevel),
        new ReportFact("Oil look", job.Details.OilLook),
        new ReportFact("Oil temperature", Oil(job.Details)),
        new ReportFact("Site altitude", Number(job.Details.AltitudeMetres, "m")),
        new ReportFact("Intake air", Number(job.Details.AirCelsius, "°C")),
    ];

    /// <summary>Name and serial; the data sheet's name where the work order has none.</summary>
    public static string Name(Job job, string sheetsName)
    {
        ArgumentNullException.ThrowIfNull(job);
        string name = job.Details.Truck.Length > 0 ? job.Details.Truck : sheetsName;
        return string.Join(", ", ((string[])[name, job.Details.Serial.Length > 0 ? "serial " + job.Details.Serial : ""]).Where(part => part.Length > 0));
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

    /// <summary>What was done is written, and no session of after it is there.</summary>
    public static bool IsCorrectedUnmeasured(Job job) => job.Correction.Length > 0 && job.Sessions.Count > 0 && job.JudgedRole != SessionRole.After;

    /// <summary>What was put right, each with what stood there before, who and when; loud where the truck was released before it.</summary>
    public static IReadOnlyList<ReportFact> Corrections(Job job) => [.. job.Corrections.Select((one, i) => new ReportFact(
        "Corrected",
        $"{one.Field} was {Stood(job, i)}, is {Quoted(one.Value)}: {one.Technician}, {Moment(one.Made)}{(one.Reason.Length == 0 ? "" : ", " + one.Reason)}{(IsAfterRelease(job, one) ? " (AFTER THE RELEASE)" : "")}",
        IsLoud: IsAfterRelease(job, one)))];

    public static JobFacts ForTheJudge(JobDetails details) => new(
        Written(details.Fuel), details.AltitudeMetres, details.AirCelsius, details.OilCelsius, Written(details.OilLevel), Written(details.OilLook));

    public static string Moment(DateTimeOffset time) => time.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture);

    private static bool IsAfterRelease(Job job, Correction one) => job.Release.Release is { } release && one.Made > release.Made;

    private static string Stood(Job job, int index) => job.Corrections.Take(index).LastOrDefault(one => one.Field == job.Corrections[index].Field) is { } earlier
        ? Quoted(earlier.Value)
        : Quoted(job.AsWritten is Job written ? written.ValueOf(job.Corrections[index].Field) ?? "" : "");

    private static string Quoted(string text) => text.Length == 0 ? "nothing" : $"\"{text}\"";

    private static IEnumerable<ReportFact> Members(string label, IReadOnlyList<string> ids) =>
        ids.Count > 0 ? [new ReportFact(label, string.Join(' ', ids))] : [];

    private static string? Oil(JobDetails details) =>
        details.OilCelsius is null || details.OilRead.Length == 0 ? Number(details.OilCelsius, "°C") : $"{Number(details.OilCelsius, "°C")} ({details.OilRead})";

    private static string? Number(double? value, string unit) => value is double number ? number.ToString("0.#", CultureInfo.InvariantCulture) + " " + unit : null;

    private static string? Written(string text) => text.Length == 0 ? null : text;
}
