using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;

namespace LoggerBox.Host.Report;

/// <summary>Aligned columns for a terminal; a row of one cell is a heading over the full width.</summary>
public sealed class TextTable
{
    private readonly List<string[]> rows = [];
    private readonly bool[] right;

    /// <param name="columns">One letter a column: l left-aligned, r right-aligned.</param>
    public TextTable(string columns)
    {
        ArgumentNullException.ThrowIfNull(columns);
        right = [.. columns.Select(letter => letter == 'r')];
    }

    public void Add(params string[] cells) => rows.Add(cells);

    public void WriteTo(TextWriter output, string indent = "  ")
    {
        ArgumentNullException.ThrowIfNull(output);
        int[] widths = [.. Enumerable.Range(0, right.Length).Select(WidthOf)];
        foreach (string[] row in rows)
        {
            if (row.Length == 1)
            {
                output.WriteLine(row[0]);
                continue;
            }

            IEnumerable<string> cells = row.Select((cell, column) => right[column] ? cell.PadLeft(widths[column]) : cell.PadRight(widths[column]));
            output.WriteLine((indent + string.Join("  ", cells)).TrimEnd());
        }
    }

    private int WidthOf(int column) => rows.Where(row => row.Length > 1 && column < row.Length).Select(row => row[column].Length).DefaultIfEmpty(0).Max();
}
