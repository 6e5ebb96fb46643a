using System;
using System.Data.Common;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Host.Archive;

/// <summary>How a session's row is read and what its records put into it.</summary>
internal static class SessionColumns
{
    public const string Select =
        $"""
        SELECT *,
            (SELECT coalesce(sum(length(bytes)), 0) FROM parts WHERE session = sessions.id) AS received,
            (SELECT CAST(value AS BIGINT) FROM corrections
                WHERE subject = 'S' || sessions.id AND field = '{CorrectionRows.StartField}' ORDER BY corrections.id DESC LIMIT 1) AS corrected_start
        FROM sessions
        """;

    public const string OfTheseNumbers =
        " WHERE logger_id = @logger AND boot_count = @boot AND session_number = @number AND length = @length";

    /// <summary>The next number: as with jobs.</summary>
    public const string Insert =
        """
        INSERT INTO sessions (id, logger_id, boot_count, session_number, length, state, origin, source, stored_utc, stored_offset_minutes)
        VALUES ((SELECT coalesce(max(id), 0) + 1 FROM sessions), @logger, @boot, @number, @length, @state, @origin, @source, @now, @offset)
        RETURNING id
        """;

    /// <summary>Bytes of another length or another sum are other bytes.</summary>
    public const string CountOfSum = "SELECT count(*) FROM sessions WHERE length = @length AND crc = @crc AND state = 'complete'";

    /// <summary>Says of a stored session whose it is.</summary>
    public const string Identify =
        "UPDATE sessions SET logger_id = @logger, boot_count = @boot, session_number = @number WHERE id = @id";

    public const string Complete =
        """
        UPDATE sessions SET state = 'complete', crc = @crc, start_utc = @start, duration_ms = @duration, sample_sets = @sets, holds = @holds,
            steps_captured = @steps, ended = @ended, plan_name = @plan,
            damaged_records = @damagedRecords, damaged_bytes = @damagedBytes, unknown_records = @unknown
        WHERE id = @id
        """;

    public static (string Name, object? Value)[] Numbers(SessionIdentity identity, long length) =>
    [
        ("@logger", (long)identity.LoggerId),
        ("@boot", (long)identity.BootCount),
        ("@number", (long)identity.SessionNumber),
        ("@length", length),
    ];

    public static (string Name, object? Value)[] OfNew(
        SessionIdentity identity, long length, string state, SessionOrigin origin, string source, DateTimeOffset now) =>
    [
        .. Numbers(identity, length),
        ("@state", state),
        ("@origin", Written(origin)),
        ("@source", source),
        ("@now", now.ToUnixTimeSeconds()),
        ("@offset", (long)now.Offset.TotalMinutes),
    ];

    public static (string Name, object? Value)[] OfRecords(long id, uint crc, DecodedSession decoded)
    {
        RecordedSession session = decoded.Session;
        return
        [
            ("@id", id),
            ("@crc", (long)crc),
            ("@start", session.Header.StartUtcSeconds == 0 ? null : (long)session.Header.StartUtcSeconds),
            ("@duration", DurationMilliseconds(decoded)),
            ("@sets", decoded.SampleSets),
            ("@holds", (long)session.Holds.Count),
            ("@steps", (long)(session.End?.StepsCaptured ?? 0)),
            ("@ended", session.End is null ? 0L : 1L),
            ("@plan", session.Header.PlanName),
            ("@damagedRecords", decoded.Damage.Records),
            ("@damagedBytes", decoded.Damage.Bytes),
            ("@unknown", decoded.Damage.UnknownRecords),
        ];
    }

    public static ArchivedSession FromRow(DbDataReader row) => new(
        RowId.Session(row.Integer("id")),
        new SessionIdentity((uint)row.Integer("logger_id"), (ushort)row.Integer("boot_count"), (uint)row.Integer("session_number")),
        row.Integer("length"),
        TryReadOrigin(row.Text("origin"), out SessionOrigin origin) ? origin : SessionOrigin.Fetched,
        row.Text("source"),
        row.MomentOrNull("stored")!.Value,
        row.Text("state") == "complete",
        row.Integer("received"),
        (uint?)row.IntegerOrNull("crc"),
        Start(row),
        TimeSpan.FromMilliseconds(row.Integer("duration_ms")),
        row.Integer("sample_sets"),
        row.Integer("holds"),
        (uint)row.Integer("steps_captured"),
        row.Integer("ended") == 1,
        row.Text("plan_name"),
        new SessionDamage(row.Integer("damaged_records"), row.Integer("damaged_bytes"), row.Integer("unknown_records")));

    private static long DurationMilliseconds(DecodedSession decoded)
    {
        RecordedSession session = decoded.Session;
        long last = decoded.LastSampleMicroseconds ?? session.End?.Microseconds ?? 0;
        // Wrong clocks in a damaged record must not make a duration that no column of time can hold.
        return Math.Clamp(last - session.Header.StartMicroseconds, 0, (long)TimeSpan.FromDays(3650).TotalMicroseconds) / 1000;
    }

    private static DateTimeOffset? Start(DbDataReader row) =>
        (row.IntegerOrNull("corrected_start") ?? row.IntegerOrNull("start_utc")) is long seconds
            ? DateTimeOffset.FromUnixTimeSeconds(seconds).ToOffset(TimeSpan.FromMinutes(row.Integer("stored_offset_minutes")))
            : null;

    public static string Written(SessionOrigin origin) => origin switch
    {
        SessionOrigin.Imported => "imported",
        SessionOrigin.Simulated => "simulated",
        _ => "fetched",
    };

    public static bool TryReadOrigin(string written, out SessionOrigin origin)
    {
        origin = written switch
        {
            "imported" => SessionOrigin.Imported,
            "simulated" => SessionOrigin.Simulated,
            _ => SessionOrigin.Fetched,
        };
        return Written(origin) == written;
    }
}
