using System;
using System.Collections.Generic;
using System.Data.Common;
using System.Linq;
using LoggerBox.Host.Releasing;

namespace LoggerBox.Host.Archive;

/// <summary>The gates of the work orders: always a new row.</summary>
public sealed class GateRows
{
    internal const int LongestName = 120;
    internal const int LongestNote = 2000;

    private readonly ArchiveFile archive;

    internal GateRows(ArchiveFile archive) => this.archive = archive;

    /// <summary>Ticks gates of a job, all or none.</summary>
    /// <exception cref="UserErrorException">No such job or gate, no name, a note that is wanted is missing, or the truck is released.</exception>
    public void Tick(string jobId, IReadOnlyCollection<string> codes, string by, string note, DateTimeOffset now) => archive.Change(open =>
    {
        Job job = archive.Jobs.Load(open, jobId);
        Demand(by, note);
        if (job.Release.Release is GateTick release)
        {
            throw GateErrors.Released(job.Id, release.By);
        }

        foreach (string code in codes)
        {
            if (code == Gate.ReleaseCode)
            {
                throw GateErrors.GivenByClosing(job.Id);
            }

            Gate gate = Gate.Find(code) ?? throw GateErrors.Unknown(code);
            if (gate.NoteWanted.Length > 0 && string.IsNullOrWhiteSpace(note))
            {
                throw GateErrors.NoteWanted(gate);
            }

            Insert(open, JobRows.Row(job), new GateTick(code, Withdrawn: false, by.Trim(), note.Trim(), now));
        }

        return true;
    });

    /// <summary>Takes ticks back, or a release; all or none.</summary>
    /// <exception cref="UserErrorException">No such job, no name, or one of them is not ticked.</exception>
    public void Withdraw(string jobId, IReadOnlyCollection<string> codes, string by, string note, DateTimeOffset now) => archive.Change(open =>
    {
        Job job = archive.Jobs.Load(open, jobId);
        Demand(by, note);
        foreach (string code in codes)
        {
            bool stands = code == Gate.ReleaseCode ? job.Release.IsReleased : job.Release.Gates.Any(state => state.Gate.Code == code && state.Tick is not null);
            if (!stands)
            {
                throw code == Gate.ReleaseCode || Gate.Find(code) is not null ? GateErrors.NotStanding(job.Id, code) : GateErrors.Unknown(code);
            }

            Insert(open, JobRows.Row(job), new GateTick(code, Withdrawn: true, by.Trim(), note.Trim(), now));
        }

        return true;
    });

    internal static void Demand(string by, string note)
    {
        if (string.IsNullOrWhiteSpace(by))
        {
            throw GateErrors.NoName();
        }

        if (!IsText(by, LongestName))
        {
            throw GateErrors.NoText("name", LongestName);
        }

        if (!IsText(note, LongestNote))
        {
            throw GateErrors.NoText("note", LongestNote);
        }
    }

    /// <summary>Of a person or of a file: no endless text, and no NUL, which no job file carries.</summary>
    internal static bool IsText(string text, int most) => text.Length <= most && !text.Any(letter => char.IsControl(letter) && letter is not ('\n' or '\r' or '\t'));

    internal static List<GateTick> Of(DbConnection open, long job) => open.Rows(
        "SELECT * FROM job_gates WHERE job = @job ORDER BY id",
        row => new GateTick(row.Text("gate"), row.Integer("withdrawn") == 1, row.Text("by_whom"), row.Text("note"), row.MomentOrNull("made")!.Value),
        ("@job", job));

    internal static int Insert(DbConnection open, long job, GateTick tick) => open.Execute(
        """
        INSERT INTO job_gates (id, job, gate, withdrawn, by_whom, note, made_utc, made_offset_minutes)
        VALUES ((SELECT coalesce(max(id), 0) + 1 FROM job_gates), @job, @gate, @withdrawn, @by, @note, @made, @offset)
        """,
        ("@job", job),
        ("@gate", tick.Gate),
        ("@withdrawn", tick.Withdrawn ? 1L : 0L),
        ("@by", tick.By),
        ("@note", tick.Note),
        ("@made", tick.Made.ToUnixTimeSeconds()),
        ("@offset", (long)tick.Made.Offset.TotalMinutes));
}
