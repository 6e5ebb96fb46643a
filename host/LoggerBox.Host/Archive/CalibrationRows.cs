using System;
using System.Collections.Generic;
using System.Data.Common;
using System.Globalization;
using System.Linq;

namespace LoggerBox.Host.Archive;

/// <summary>Calibrations that were stored on loggers: always a new row.</summary>
public sealed class CalibrationRows
{
    private const string DayFormat = "yyyy-MM-dd";

    private readonly ArchiveFile archive;

    internal CalibrationRows(ArchiveFile archive) => this.archive = archive;

    /// <summary>All of them or none.</summary>
    public void Add(IEnumerable<ArchivedCalibration> calibrations) => archive.Change(open => calibrations.Sum(one => Insert(open, one)));

    /// <summary>All of a logger, oldest first.</summary>
    public IReadOnlyList<ArchivedCalibration> Of(uint loggerId) => archive.Read(open => Of(open, loggerId));

    /// <summary>The last of each logger's channels.</summary>
    public IReadOnlyList<ArchivedCalibration> Latest() => archive.Read(open => open.Rows("SELECT * FROM calibrations ORDER BY id", FromRow)
        .GroupBy(one => (one.LoggerId, one.Channel))
        .Select(channel => channel.Last())
        .OrderBy(one => one.LoggerId)
        .ThenBy(one => one.Channel)
        .ToList());

    internal static string Written(DateOnly? day) => day?.ToString(DayFormat, CultureInfo.InvariantCulture) ?? "";

    /// <exception cref="FormatException">It is no day.</exception>
    internal static DateOnly? Day(string written) => written.Length == 0 ? null
        : DateOnly.TryParseExact(written, DayFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day
        : throw new FormatException($"\"{Excerpt.Of(written)}\" is no day");

    internal static List<ArchivedCalibration> Of(DbConnection open, uint loggerId) =>
        open.Rows("SELECT * FROM calibrations WHERE logger_id = @logger ORDER BY id", FromRow, ("@logger", (long)loggerId));

    private static ArchivedCalibration FromRow(DbDataReader row) => new ArchivedCalibration(
        (uint)row.Integer("logger_id"),
        (int)row.Integer("channel"),
        checked((int)row.Integer("zero_counts")),
        checked((int)row.Integer("span_counts")),
        checked((int)row.Integer("span_pascal")),
        checked((int)row.Integer("accuracy_pascal")),
        row.Text("transducer"),
        row.Text("reference"),
        row.Text("certificate"),
        Day(row.Text("certified_on")),
        Day(row.Text("reference_due")),
        Day(row.Text("due")),
        row.Text("by_whom"),
        row.Text("points"),
        row.MomentOrNull("made")!.Value);

    internal static int Insert(DbConnection open, ArchivedCalibration one) => open.Execute(
        """
        INSERT INTO calibrations (id, logger_id, channel, zero_counts, span_counts, span_pascal, accuracy_pascal, transducer, reference, certificate, certified_on,
            reference_due, due, by_whom, points, made_utc, made_offset_minutes)
        VALUES ((SELECT coalesce(max(id), 0) + 1 FROM calibrations), @logger, @channel, @zero, @spanCounts, @spanPascal, @accuracy, @transducer, @reference,
            @certificate, @certified, @referenceDue, @due, @by, @points, @made, @offset)
        """,
        ("@logger", (long)one.LoggerId),
        ("@channel", (long)one.Channel),
        ("@zero", (long)one.ZeroCounts),
        ("@spanCounts", (long)one.SpanCounts),
        ("@spanPascal", (long)one.SpanPascal),
        ("@accuracy", (long)one.AccuracyPascal),
        ("@transducer", one.Transducer),
        ("@reference", one.Reference),
        ("@certificate", one.Certificate),
        ("@certified", Written(one.CertifiedOn)),
        ("@referenceDue", Written(one.ReferenceDue)),
        ("@due", Written(one.Due)),
        ("@by", one.By),
        ("@points", one.Points),
        ("@made", one.Made.ToUnixTimeSeconds()),
        ("@offset", (long)one.Made.Offset.TotalMinutes));
}
