using System;
using System.Data.Common;
using System.Security.Cryptography;

namespace LoggerBox.Host.Archive;

/// <summary>How a job's row is written and read.</summary>
internal static class JobColumns
{
    /// <summary>Without an id the next one. Rows are never removed, and one program changes the archive at a time: no number is given twice.</summary>
    public const string Insert =
        """
        INSERT INTO jobs (id, uid, truck, serial, hour_meter, fuel, complaint, technician, sheet_name, sheet_text, altitude_metres, air_celsius,
            oil_level, oil_look, oil_celsius, oil_read, opened_utc, opened_offset_minutes)
        VALUES (coalesce(@id, (SELECT coalesce(max(id), 0) + 1 FROM jobs)), @uid, @truck, @serial, @hours, @fuel, @complaint, @technician, @sheetName, @sheetText,
            @altitude, @air, @oilLevel, @oilLook, @oilCelsius, @oilRead, @now, @offset)
        RETURNING id
        """;

    public const string AddSession =
        """
        INSERT INTO job_sessions (rowid, job, session, added_utc, added_offset_minutes, role)
        VALUES ((SELECT coalesce(max(rowid), 0) + 1 FROM job_sessions), @job, @session, @now, @offset, @role)
        ON CONFLICT (job, session) DO UPDATE SET role = excluded.role WHERE excluded.role <> ''
        """;

    public const string Close =
        """
        UPDATE jobs SET
            closed_utc = coalesce(closed_utc, @now),
            closed_offset_minutes = coalesce(closed_offset_minutes, @offset),
            cause = coalesce(nullif(@cause, ''), cause),
            correction = coalesce(nullif(@correction, ''), correction)
        WHERE id = @id
        """;

    /// <param name="uid">Null: a new one.</param>
    public static (string Name, object? Value)[] OfNew(long? id, string? uid, JobDetails details, DateTimeOffset now) =>
    [
        ("@id", id),
        ("@uid", uid ?? Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16))),
        ("@truck", details.Truck),
        ("@serial", details.Serial),
        ("@hours", details.HourMeter),
        ("@fuel", details.Fuel),
        ("@complaint", details.Complaint),
        ("@technician", details.Technician),
        ("@sheetName", details.SheetName),
        ("@sheetText", details.SheetText),
        ("@altitude", details.AltitudeMetres),
        ("@air", details.AirCelsius),
        ("@oilLevel", details.OilLevel),
        ("@oilLook", details.OilLook),
        ("@oilCelsius", details.OilCelsius),
        ("@oilRead", details.OilRead),
        .. Moment(now),
    ];

    public static (string Name, object? Value)[] OfSession(long job, long session, SessionRole role, DateTimeOffset now) =>
        [("@job", job), ("@session", session), ("@role", Written(role)), .. Moment(now)];

    public static (string Name, object? Value)[] OfClosing(long job, DateTimeOffset now, string cause, string correction) =>
        [("@id", job), ("@cause", cause), ("@correction", correction), .. Moment(now)];

    public static Job FromRow(DbDataReader row) => new(
        RowId.Job(row.Integer("id")),
        row.Text("uid"),
        new JobDetails(
            row.Text("truck"),
            row.Text("serial"),
            row.RealOrNull("hour_meter"),
            row.Text("fuel"),
            row.Text("complaint"),
            row.Text("technician"),
            row.Text("sheet_name"),
            row.Text("sheet_text"),
            row.RealOrNull("altitude_metres"),
            row.RealOrNull("air_celsius"),
            row.Text("oil_level"),
            row.Text("oil_look"),
            row.RealOrNull("oil_celsius"),
            row.Text("oil_read")),
        row.MomentOrNull("opened")!.Value,
        row.MomentOrNull("closed"),
        row.Text("cause"),
        row.Text("correction"),
        [],
        []);

    public static string Written(SessionRole role) => role switch
    {
        SessionRole.Before => "before",
        SessionRole.After => "after",
        _ => "",
    };

    public static SessionRole Role(string written) => written switch
    {
        "before" => SessionRole.Before,
        "after" => SessionRole.After,
        _ => SessionRole.Any,
    };

    private static (string Name, object? Value)[] Moment(DateTimeOffset now) =>
        [("@now", now.ToUnixTimeSeconds()), ("@offset", (long)now.Offset.TotalMinutes)];
}
