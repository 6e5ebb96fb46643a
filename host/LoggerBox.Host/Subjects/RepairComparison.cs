using System.Linq;
using LoggerBox.Host.Comparing;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;

namespace LoggerBox.Host.Subjects;

/// <summary>A job's sessions of before the repair against those of after it.</summary>
internal static class RepairComparison
{
    /// <summary>Null where the job has not both.</summary>
    /// <param name="after">The judgement of after the repair.</param>
    public static ReportComparison? Of(Subject subject, Judgement after, DataSheet sheet)
    {
        if (subject.Before.Count == 0)
        {
            return null;
        }

        Subject before = subject with { Recordings = subject.Before, Before = [], Notes = [] };
        Comparison both = Comparison.Of(before.Judged(sheet, after.Unit), after);
        return new ReportComparison(ComparisonText.Headline(both), [.. both.Readings.Select(Row)], both.Notes);
    }

    private static ReportChange Row(ReadingChange row) => new(
        row.Step, row.Quantity, row.Unit, row.Before?.Value, row.After?.Value, row.Change, row.Uncertainty, row.IsReal, row.Before?.Verdict, row.After?.Verdict);
}
