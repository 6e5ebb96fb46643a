using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using Parquet;
using Parquet.Schema;

namespace LoggerBox.Host.Tables;

/// <summary>A table as an Apache Parquet file: numbers as doubles, texts as UTF-8 strings, what is not a cell as key and value of the file.</summary>
public static class ParquetTable
{
    private static ReadOnlySpan<byte> Magic => "PAR1"u8;

    public static void Write(Stream file, IReadOnlyList<TableColumn> columns, IReadOnlyDictionary<string, string> about)
    {
        ArgumentNullException.ThrowIfNull(columns);

        // The library's writer seeks back in what it has written.
        using MemoryStream bytes = new();
        WriteAsync(bytes, columns, about).GetAwaiter().GetResult();
        bytes.WriteTo(file);
    }

    /// <summary>By the four letters that every such file begins and ends with.</summary>
    public static bool IsOne(ReadOnlySpan<byte> file) => file.Length >= 2 * Magic.Length && file.StartsWith(Magic) && file.EndsWith(Magic);

    /// <exception cref="UserErrorException">It is damaged, or claims more than any memory holds.</exception>
    public static IReadOnlyList<TableColumn> Read(byte[] file, string fileName)
    {
        try
        {
            using MemoryStream bytes = new(file, writable: false);
            return ParquetColumns.Read(bytes).GetAwaiter().GetResult();
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            // Whatever a damaged file makes the library stumble over, the person can do the same about it.
            throw new UserErrorException($"{fileName} cannot be read as a Parquet file ({Excerpt.Of(error.Message).TrimEnd('.')}); write it again, or export the recording as CSV.");
        }
    }

    private static async Task WriteAsync(Stream bytes, IReadOnlyList<TableColumn> columns, IReadOnlyDictionary<string, string> about)
    {
        DataField[] fields = [.. columns.Select(column => column is NumberColumn ? new DataField(column.Name, typeof(double), isNullable: true) : new DataField(column.Name, typeof(string), isNullable: true))];
        ParquetWriter writer = await ParquetWriter.CreateAsync(new ParquetSchema(fields), bytes).ConfigureAwait(false);
        await using (writer.ConfigureAwait(false))
        {
            writer.CustomMetadata = about.ToDictionary();
            using ParquetRowGroupWriter rows = writer.CreateRowGroup();
            foreach ((DataField field, TableColumn column) in fields.Zip(columns))
            {
                await (column is NumberColumn numbers
                    ? rows.WriteAsync<double>(field, numbers.Values.ToArray())
                    : rows.WriteAsync(field, ((TextColumn)column).Values!)).ConfigureAwait(false);
            }
        }
    }
}
