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
    private const int LongestNumber = 64;

    public static string Render(RecordedSession session, string title, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(session);
        IReadOnlyList<TableColumn> columns = ExportedTrace.Columns(session, unit);
        var text = new StringBuilder();
        text.Append("# ").Append(PlainText.Of(title)).Append('\n');
        text.AppendJoin(',', columns.Select(column => column.Name)).Append('\n');
        for (int row = 0; row < session.Samples.Count; row++)
        {
            for (int i = 0; i < columns.Count; i++)
            {
                text.Append(i > 0 ? "," : "");
                AppendCell(text, columns[i], row);
            }

            text.Append('\n');
        }

        return text.ToString();
    }

    // A text of its own for each cell would be a million of them in an hour.
    private static void AppendCell(StringBuilder text, TableColumn column, int row)
    {
        Span<char> cell = stackalloc char[LongestNumber];
        if (column is TextColumn words)
        {
            text.Append(words.Values[row]);
        }
        else if (column is NumberColumn { Values: var values, Format: var format } && values[row] is double value)
        {
            text.Append(value.TryFormat(cell, out int length, format, CultureInfo.InvariantCulture) ? cell[..length] : value.ToString(format, CultureInfo.InvariantCulture));
        }
    }
}
