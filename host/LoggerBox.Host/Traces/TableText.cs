using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using LoggerBox.Host.Tables;

namespace LoggerBox.Host.Traces;

/// <summary>A table as the lines of a trace file, so that its cells are read and refused like any others.</summary>
internal static class TableText
{
    private const int LongestNumber = 32;

    public static byte[] Of(IReadOnlyList<TableColumn> columns)
    {
        using MemoryStream text = new();
        text.Write(Encoding.UTF8.GetBytes(string.Join(',', columns.Select(column => Quoted(column.Name)))));
        int rows = columns.Count == 0 ? 0 : columns.Max(Count);
        for (int row = 0; row < rows; row++)
        {
            text.WriteByte((byte)'\n');
            for (int i = 0; i < columns.Count; i++)
            {
                if (i > 0)
                {
                    text.WriteByte((byte)',');
                }

                Write(text, columns[i], row);
            }
        }

        return text.ToArray();
    }

    private static void Write(MemoryStream text, TableColumn column, int row)
    {
        if (column is TextColumn texts)
        {
            text.Write(Encoding.UTF8.GetBytes(texts.Values[row] is string cell ? Quoted(cell) : ""));
        }
        else if (((NumberColumn)column).Values[row] is double number)
        {
            Span<byte> digits = stackalloc byte[LongestNumber];
            number.TryFormat(digits, out int length, default, CultureInfo.InvariantCulture);
            text.Write(digits[..length]);
        }
    }

    // A cell is one line, and a lone quote would end it.
    private static string Quoted(string cell) => $"\"{string.Concat(cell.Select(letter => char.IsControl(letter) ? ' ' : letter == '"' ? '\'' : letter))}\"";

    private static int Count(TableColumn column) => column is TextColumn texts ? texts.Values.Count : ((NumberColumn)column).Values.Count;
}
