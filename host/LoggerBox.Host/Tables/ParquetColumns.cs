using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using Parquet;
using Parquet.Schema;

namespace LoggerBox.Host.Tables;

/// <summary>Reads the columns of a Parquet file as numbers or texts.</summary>
internal static class ParquetColumns
{
    /// <summary>Sixteen hours at the fastest rate that is read; a few bytes can claim more rows than any memory holds.</summary>
    private const long MostRows = 60_000_000;

    private const string Moment = "yyyy-MM-dd'T'HH:mm:ss.FFFFFFF";
    private const string NoCell = "neither number nor text";

    /// <exception cref="NotSupportedException">The file claims too much.</exception>
    public static async Task<IReadOnlyList<TableColumn>> Read(Stream bytes)
    {
        ParquetReader reader = await ParquetReader.CreateAsync(bytes).ConfigureAwait(false);
        await using (reader.ConfigureAwait(false))
        {
            List<TableColumn> columns = [];
            foreach (DataField field in reader.Schema.DataFields)
            {
                columns.Add(await Column(reader, field).ConfigureAwait(false));
            }

            return columns;
        }
    }

    private static async Task<TableColumn> Column(ParquetReader reader, DataField field)
    {
        List<double?> numbers = [];
        List<string?> texts = [];
        for (int i = 0; i < reader.RowGroupCount; i++)
        {
            using ParquetRowGroupReader rows = reader.OpenRowGroupReader(i);
            if (rows.RowCount + numbers.Count + texts.Count > MostRows)
            {
                throw new NotSupportedException($"it claims more than {MostRows} rows");
            }

            int count = (int)rows.RowCount;
            if (IsNumber(field))
            {
                await AddNumbers(numbers, rows, field, count).ConfigureAwait(false);
            }
            else
            {
                texts.AddRange(await Texts(rows, field, count).ConfigureAwait(false));
            }
        }

        return IsNumber(field) ? new NumberColumn(field.Name, numbers) : new TextColumn(field.Name, texts);
    }

    private static bool IsNumber(DataField field) => !field.IsArray
        && Type.GetTypeCode(field.ClrType) is TypeCode.Double or TypeCode.Single or TypeCode.Int64 or TypeCode.Int32 or TypeCode.Int16 or TypeCode.UInt16 or TypeCode.UInt32;

    private static async Task<IEnumerable<string?>> Texts(ParquetRowGroupReader rows, DataField field, int count)
    {
        if (!field.IsArray && (field.ClrType == typeof(string) || field.ClrType == typeof(ReadOnlyMemory<char>)))
        {
            string?[] cells = new string?[count];
            await rows.ReadAsync(field, cells.AsMemory()!).ConfigureAwait(false);
            return cells;
        }

        if (!field.IsArray && field.ClrType == typeof(DateTime))
        {
            return (await Cells<DateTime>(rows, field, count).ConfigureAwait(false)).Select(time => time?.ToString(Moment, CultureInfo.InvariantCulture));
        }

        // Lists and what else a foreign file may hold: it does no harm until it is taken for a reading.
        return Enumerable.Repeat(NoCell, count);
    }

    private static Task AddNumbers(List<double?> numbers, ParquetRowGroupReader rows, DataField field, int count) => Type.GetTypeCode(field.ClrType) switch
    {
        TypeCode.Double => Add<double>(numbers, rows, field, count, value => value),
        TypeCode.Single => Add<float>(numbers, rows, field, count, value => value),
        TypeCode.Int64 => Add<long>(numbers, rows, field, count, value => value),
        TypeCode.Int32 => Add<int>(numbers, rows, field, count, value => value),
        TypeCode.Int16 => Add<short>(numbers, rows, field, count, value => value),
        TypeCode.UInt16 => Add<ushort>(numbers, rows, field, count, value => value),
        _ => Add<uint>(numbers, rows, field, count, value => value),
    };

    private static async Task Add<T>(List<double?> numbers, ParquetRowGroupReader rows, DataField field, int count, Func<T, double> number)
        where T : struct
    {
        foreach (T? cell in await Cells<T>(rows, field, count).ConfigureAwait(false))
        {
            numbers.Add(cell is T value ? number(value) : null);
        }
    }

    private static async Task<T?[]> Cells<T>(ParquetRowGroupReader rows, DataField field, int count)
        where T : struct
    {
        if (field.IsNullable)
        {
            T?[] cells = new T?[count];
            await rows.ReadAsync<T>(field, cells.AsMemory()).ConfigureAwait(false);
            return cells;
        }

        T[] plain = new T[count];
        await rows.ReadAsync<T>(field, plain.AsMemory()).ConfigureAwait(false);
        return Array.ConvertAll(plain, cell => (T?)cell);
    }
}
