using System.Collections.Generic;

namespace LoggerBox.Host.Archive;

/// <summary>A table of an archive: in what order its rows are read, and whose rows they belong to.</summary>
/// <param name="Parents">Columns that hold the id of a row of another table.</param>
internal sealed record ArchiveTable(string Name, string Order, params (string Column, string Table)[] Parents)
{
    /// <summary>The recorded bytes: all others together are little beside them.</summary>
    public static ArchiveTable Parts { get; } = new("parts", "session, start", ("session", "sessions"));

    /// <summary>Each after those that its rows belong to.</summary>
    public static IReadOnlyList<ArchiveTable> All { get; } =
    [
        new("sessions", "id"),
        Parts,
        new("jobs", "id"),
        new("job_sessions", "rowid", ("job", "jobs"), ("session", "sessions")),
        new("corrections", "id"),
        new("job_gates", "id", ("job", "jobs")),
        new("calibrations", "id"),
    ];
}
