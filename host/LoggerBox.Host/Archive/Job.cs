using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Releasing;

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
/// <param name="Id">J1, J2, ... in this archive.</param>
/// <param name="Uid">The same in every archive that the job is imported into.</param>
/// <param name="Cause">What was found; empty until somebody has written it.</param>
/// <param name="Correction">What was done.</param>
/// <param name="Gates">Every tick and withdrawal, in the order in which they were made.</param>
public sealed record Job(
    string Id,
    string Uid,
    JobDetails Details,
    DateTimeOffset Opened,
    DateTimeOffset? Closed,
    string Cause,
    string Correction,
    IReadOnlyList<JobSession> Sessions,
    IReadOnlyList<GateTick> Gates)
{
    /// <summary>What was put right afterwards, oldest first; it counts here already.</summary>
    public IReadOnlyList<Correction> Corrections { get; init; } = [];

    /// <summary>Before anything was put right; null where this is it.</summary>
    public Job? AsWritten { get; init; }

    /// <summary>When its first session began, and when that came into the archive; null where it has none, or only the list of jobs was asked for.</summary>
    public TestMoments? Test { get; init; }

    /// <summary>What stands in a <see cref="JobField"/>; null: a work order has no such field.</summary>
    public string? ValueOf(string field) => CorrectedJob.Value(this, field);

    /// <summary>What the gates come to.</summary>
    public ReleaseState Release => ReleaseState.Of(Gates, Closed is not null);

    public IReadOnlyList<string> SessionIds => [.. Sessions.Select(session => session.Id)];

    /// <summary>Whose readings are the truck's as it is now: after the repair where anything was measured then. Before and after are never one judgement.</summary>
    public SessionRole JudgedRole => Sessions.Any(session => session.Role == SessionRole.After) ? SessionRole.After
        : Sessions.Any(session => session.Role == SessionRole.Before) ? SessionRole.Before
        : SessionRole.Any;

    public IReadOnlyList<string> SessionIdsOf(SessionRole role) => [.. Sessions.Where(session => session.Role == role).Select(session => session.Id)];
}

/// <param name="Began">By the logger's clock, or as somebody dated it; where neither is known, when it came into the archive.</param>
public sealed record TestMoments(DateTimeOffset Began, DateTimeOffset Arrived);

/// <param name="Id">S1, S2, ...</param>
public sealed record JobSession(string Id, SessionRole Role);

/// <summary>What a session is to its job.</summary>
public enum SessionRole
{
    /// <summary>Nobody has said.</summary>
    Any,
    Before,
    After,
}

/// <summary>What a person put right afterwards; the newest of a subject's field counts.</summary>
/// <param name="Subject">The session's or job's id.</param>
public sealed record Correction(
    string Subject,
    string Field,
    string Value,
    string Reason,
    string Technician,
    DateTimeOffset Made);
