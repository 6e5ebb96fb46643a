using System;
using LoggerBox.Host.Sessions;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Host.Archive;

/// <summary>How a session's row is read and what its records put into it.</summary>
internal static class SessionColumns
{
    public const string Select =
        $"""
        SELECT *,
            (SELECT coalesce(sum(length(bytes)), 0) FROM parts WHERE session = sessions.id) AS received,
            (SELECT CAST(value AS INTEGER) FROM corrections
                WHERE subject = 'S' || sessions.id AND field = '{CorrectionRows.StartField}' ORDER BY corrections.id DESC LIMIT 1) AS corrected_start
        FROM sessions
        """;

    public const string Complete =
        """
        UPDATE sessions SET complete = 1, start_utc = $start, duration_ms = $duration, sample_sets = $sets, holds = $holds,
            steps_captured = $steps, ended = $ended, plan_name = $plan,
            damaged_records = $damagedRecords, damaged_bytes = $damagedBytes, unknown_records = $unknown
        WHERE id = $id
        """;

    public static string Written(SessionOrigin origin) => origin switch
    {
        SessionOrigin.Imported => "imported",
        SessionOrigin.Simulated => "simulated",
        _ => "fetched",
    };

    public static (string Name, object? Value)[] OfRecords(long id, DecodedSession decoded)
    {
        RecordedSession session = decoded.Session;
        return
        [
            ("$id", id),
            ("$start", session.Header.StartUtcSeconds == 0 ? null : (long)session.Header.StartUtcSeconds),
            ("$duration", DurationMilliseconds(session)),
            ("$sets", (long)session.Samples.Count),
            ("$holds", (long)session.Holds.Count),
            ("$steps", (long)(session.End?.StepsCaptured ?? 0)),
            ("$ended", session.End is null ? 0L : 1L),
            ("$plan", session.Header.PlanName),
            ("$damagedRecords", (long)decoded.Damage.Records),
            ("$damagedBytes", decoded.Damage.Bytes),
            ("$unknown", (long)decoded.Damage.UnknownRecords),
        ];
    }

    public static ArchivedSession FromRow(SqliteDataReader row) => new(
        RowId.Session(row.Integer("id")),
        new SessionIdentity((uint)row.Integer("logger_id"), (ushort)row.Integer("boot_count"), (uint)row.Integer("session_number")),
        row.Integer("length"),
        (uint)row.Integer("crc"),
        Enum.Parse<SessionOrigin>(row.Text("origin"), ignoreCase: true),
        row.Text("source"),
        row.MomentOrNull("stored")!.Value,
        row.Integer("complete") == 1,
        row.Integer("received"),
        Start(row),
        TimeSpan.FromMilliseconds(row.Integer("duration_ms")),
        row.Integer("sample_sets"),
        row.Integer("holds"),
        (uint)row.Integer("steps_captured"),
        row.Integer("ended") == 1,
        row.Text("plan_name"),
        new SessionDamage((int)row.Integer("damaged_records"), row.Integer("damaged_bytes"), (int)row.Integer("unknown_records")));

    private static long DurationMilliseconds(RecordedSession session)
    {
        long last = session.Samples.Count > 0 ? session.Samples[^1].Microseconds : session.End?.Microseconds ?? 0;
        // Wrong clocks in a damaged record must not make a duration that no column of time can hold.
        return Math.Clamp(last - session.Header.StartMicroseconds, 0, (long)TimeSpan.FromDays(3650).TotalMicroseconds) / 1000;
    }

    private static DateTimeOffset? Start(SqliteDataReader row) =>
        (row.IntegerOrNull("corrected_start") ?? row.IntegerOrNull("start_utc")) is long seconds
            ? DateTimeOffset.FromUnixTimeSeconds(seconds).ToOffset(TimeSpan.FromMinutes(row.Integer("stored_offset_minutes")))
            : null;
}
