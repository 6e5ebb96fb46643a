using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Comparing;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Subjects;

/// <summary>A job's sessions of before the repair against those of after it.</summary>
internal static class RepairComparison
{
    /// <summary>Null where the job has not both.</summary>
    public static ReportComparison? Of(Subject subject, DataSheet sheet, PressureUnit unit)
    {
        Subject before = subject.OfRole(SessionRole.Before);
        Subject after = subject.OfRole(SessionRole.After);
        if (before.Recordings.Count == 0 || after.Recordings.Count == 0)
        {
            return null;
        }

        Comparison both = Comparison.Of(Judge.Of(before.Sessions, sheet, subject.Facts, unit), Judge.Of(after.Sessions, sheet, subject.Facts, unit));
        return new ReportComparison(ComparisonText.Headline(both), [.. both.Readings.Select(Row)], both.Notes);
    }

    private static ReportChange Row(ReadingChange row) => new(
        row.Step, row.Quantity, row.Unit, row.Before?.Value, row.After?.Value, row.Change, row.Uncertainty, row.IsReal, row.Before?.Verdict, row.After?.Verdict);
}
