using System;
using System.Collections.Generic;
using System.Data.Common;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Releasing;

namespace LoggerBox.Host.Archive;

/// <summary>Corrections: always a new row, never a change of what was recorded.</summary>
public sealed class CorrectionRows
{
    /// <summary>The field by which a session without a valid clock is dated: seconds since 1970 UTC.</summary>
    internal const string StartField = "start-utc";

    private readonly ArchiveFile archive;

    internal CorrectionRows(ArchiveFile archive) => this.archive = archive;

    public void Add(Correction correction) => archive.Change(open => Insert(open, correction));

    /// <summary>Puts fields of a job right, all or none; also of one that is closed.</summary>
    /// <param name="fields">Of <see cref="JobField"/>, with what is right.</param>
    /// <exception cref="UserErrorException">No such job, no name, no text, or a field says that already.</exception>
    public void CorrectJob(string jobId, IEnumerable<(string Field, string Value)> fields, string technician, string reason, DateTimeOffset now) => archive.Change(open =>
    {
        GateRows.Demand(technician, reason);
        Job job = archive.Jobs.Load(open, jobId);
        foreach ((string field, string value) in fields)
        {
            if (!GateRows.IsText(value, GateRows.LongestNote))
            {
                throw GateErrors.NoText(field, GateRows.LongestNote);
            }

            if (CorrectedJob.Value(job, field) == value)
            {
                throw ArchiveErrors.NothingCorrected("job " + job.Id, field);
            }

            Insert(open, new Correction(job.Id, field, value, reason.Trim(), technician.Trim(), now));
        }

        return true;
    });

    /// <summary>Says when a session was recorded.</summary>
    public void DateSession(string sessionId, DateTimeOffset start, string technician, string reason, DateTimeOffset now)
    {
        GateRows.Demand(technician, reason);
        string id = archive.Sessions.Find(sessionId).Id;
        Add(new Correction(id, StartField, start.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture), reason, technician, now));
    }

    /// <summary>Who dated a session last; null: nobody.</summary>
    public Correction? DateOf(string sessionId) => Of(sessionId).LastOrDefault(one => one.Field == StartField);

    /// <summary>All corrections of one session or job, oldest first.</summary>
    public IReadOnlyList<Correction> Of(string subject) => archive.Read(open => Of(open, subject));

    internal static List<Correction> Of(DbConnection open, string subject) => open.Rows(
        "SELECT * FROM corrections WHERE subject = @subject ORDER BY id",
        row => new Correction(
            row.Text("subject"), row.Text("field"), row.Text("value"), row.Text("reason"), row.Text("technician"), row.MomentOrNull("made")!.Value),
        ("@subject", subject));

    internal static int Insert(DbConnection open, Correction correction) => open.Execute(
        """
        INSERT INTO corrections (id, subject, field, value, reason, technician, made_utc, made_offset_minutes)
        VALUES ((SELECT coalesce(max(id), 0) + 1 FROM corrections), @subject, @field, @value, @reason, @technician, @made, @offset)
        """,
        ("@subject", correction.Subject),
        ("@field", correction.Field),
        ("@value", correction.Value),
        ("@reason", correction.Reason),
        ("@technician", correction.Technician),
        ("@made", correction.Made.ToUnixTimeSeconds()),
        ("@offset", (long)correction.Made.Offset.TotalMinutes));
}
