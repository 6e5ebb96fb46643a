using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Tables;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Report;

/// <summary>A session as a trace file: what any program, this one too, reads again.</summary>
public static class CsvExport
{
    public static string Render(RecordedSession session, string title, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(session);
        IReadOnlyList<TableColumn> columns = ExportedTrace.Columns(session, unit);
        var text = new StringBuilder();
        text.Append("# ").Append(PlainText.Of(title)).Append('\n');
        text.AppendJoin(',', columns.Select(column => column.Name)).Append('\n');
        for (int row = 0; row < session.Samples.Count; row++)
        {
            text.AppendJoin(',', columns.Select(column => Cell(column, row))).Append('\n');
        }

        return text.ToString();
    }

    private static string? Cell(TableColumn column, int row) =>
        column is NumberColumn numbers ? numbers.Values[row]?.ToString(numbers.Format, CultureInfo.InvariantCulture) : ((TextColumn)column).Values[row];
}
