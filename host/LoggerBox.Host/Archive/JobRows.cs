using System;
using System.Collections.Generic;
using System.Linq;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Host.Archive;

/// <summary>The work orders, and which sessions belong to which.</summary>
public sealed class JobRows
{
    private readonly ArchiveFile archive;

    internal JobRows(ArchiveFile archive) => this.archive = archive;

    /// <returns>The new job's id.</returns>
    public string Create(JobDetails details, DateTimeOffset now) => archive.Change(open => RowId.Job(open.Scalar(
        """
        INSERT INTO jobs (truck, serial, hour_meter, fuel, complaint, technician, sheet_name, sheet_text, altitude_metres, air_celsius,
            oil_level, oil_look, oil_celsius, oil_read, opened_utc, opened_offset_minutes)
        VALUES ($truck, $serial, $hours, $fuel, $complaint, $technician, $sheetName, $sheetText, $altitude, $air,
            $oilLevel, $oilLook, $oilCelsius, $oilRead, $now, $offset)
        RETURNING id
        """,
        ("$truck", details.Truck),
        ("$serial", details.Serial),
        ("$hours", details.HourMeter),
        ("$fuel", details.Fuel),
        ("$complaint", details.Complaint),
        ("$technician", details.Technician),
        ("$sheetName", details.SheetName),
        ("$sheetText", details.SheetText),
        ("$altitude", details.AltitudeMetres),
        ("$air", details.AirCelsius),
        ("$oilLevel", details.OilLevel),
        ("$oilLook", details.OilLook),
        ("$oilCelsius", details.OilCelsius),
        ("$oilRead", details.OilRead),
        ("$now", now.ToUnixTimeSeconds()),
        ("$offset", (long)now.Offset.TotalMinutes))));

    public IReadOnlyList<Job> All() => archive.Read(open => open
        .Rows("SELECT * FROM jobs ORDER BY id", FromRow)
        .Select(job => WithSessions(open, job))
        .ToList());

    /// <exception cref="UserErrorException">There is no such job.</exception>
    public Job Load(string id) => archive.Read(open => WithSessions(open, Find(open, id)));

    /// <summary>Adds sessions to a job, all or none; one that the job has already stays once.</summary>
    /// <exception cref="UserErrorException">No such job or session, or the job is closed.</exception>
    public void AddSessions(string id, IEnumerable<string> sessionIds, DateTimeOffset now) => archive.Change(open =>
    {
        Job job = Find(open, id);
        if (job.Closed is not null)
        {
            throw ArchiveErrors.JobClosed(job.Id);
        }

        foreach (string sessionId in sessionIds)
        {
            open.Execute(
                "INSERT OR IGNORE INTO job_sessions (job, session, added_utc, added_offset_minutes) VALUES ($job, $session, $now, $offset)",
                ("$job", Row(job.Id)),
                ("$session", archive.Sessions.RowOf(open, sessionId)),
                ("$now", now.ToUnixTimeSeconds()),
                ("$offset", (long)now.Offset.TotalMinutes));
        }

        return true;
    });

    /// <summary>Closes a job; one that is closed keeps its first date.</summary>
    public void Close(string id, DateTimeOffset now) => archive.Change(open => open.Execute(
        "UPDATE jobs SET closed_utc = $now, closed_offset_minutes = $offset WHERE id = $id AND closed_utc IS NULL",
        ("$id", Row(Find(open, id).Id)),
        ("$now", now.ToUnixTimeSeconds()),
        ("$offset", (long)now.Offset.TotalMinutes)));

    private Job Find(SqliteConnection open, string id) =>
        open.Rows("SELECT * FROM jobs WHERE id = $id", FromRow, ("$id", Row(id))).FirstOrDefault()
        ?? throw ArchiveErrors.NoSuchJob(archive.Path, id);

    private long Row(string id) => RowId.TryParse(id, 'J', out long row) ? row : throw ArchiveErrors.NoSuchJob(archive.Path, id);

    private Job WithSessions(SqliteConnection open, Job job) => job with
    {
        SessionIds = open.Rows(
            "SELECT session FROM job_sessions WHERE job = $job ORDER BY rowid",
            row => RowId.Session(row.GetInt64(0)),
            ("$job", Row(job.Id))),
    };

    private static Job FromRow(SqliteDataReader row) => new(
        RowId.Job(row.Integer("id")),
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
        []);
}
