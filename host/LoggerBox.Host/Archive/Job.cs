using System;
using System.Collections.Generic;

namespace LoggerBox.Host.Archive;

/// <summary>What the work order says. Empty and null: not written down.</summary>
/// <param name="Complaint">In the customer's words.</param>
/// <param name="SheetName">The data sheet file's name without folder; its text is kept with the job.</param>
/// <param name="OilRead">How the oil temperature was read.</param>
public sealed record JobDetails(
    string Truck = "",
    string Serial = "",
    double? HourMeter = null,
    string Fuel = "",
    string Complaint = "",
    string Technician = "",
    string SheetName = "",
    string SheetText = "",
    double? AltitudeMetres = null,
    double? AirCelsius = null,
    string OilLevel = "",
    string OilLook = "",
    double? OilCelsius = null,
    string OilRead = "");

/// <summary>A job with the sessions of its engine runs and visits, in the order they were added.</summary>
/// <param name="Id">J1, J2, ...</param>
public sealed record Job(
    string Id,
    JobDetails Details,
    DateTimeOffset Opened,
    DateTimeOffset? Closed,
    IReadOnlyList<string> SessionIds);

/// <summary>What a person put right afterwards; the newest of a subject's field counts.</summary>
/// <param name="Subject">The session's or job's id.</param>
public sealed record Correction(
    string Subject,
    string Field,
    string Value,
    string Reason,
    string Technician,
    DateTimeOffset Made);
