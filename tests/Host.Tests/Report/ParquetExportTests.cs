using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.Json;
using LoggerBox.Host.Report;
using LoggerBox.Host.Units;
using ParquetSharp;
using Xunit;

namespace LoggerBox.Host.Tests.Report;

/// <summary>The file is read back by the reference implementation, Apache Arrow's C++ library (through ParquetSharp), which is what pyarrow and pandas read with.</summary>
public class ParquetExportTests
{
    private static readonly string Digest = new('a', 64);

    [Fact]
    public void Another_reader_finds_the_same_cells_as_in_the_csv_file()
    {
        string[][] rows = [.. CsvExport.Render(SampleReport.Session(), "t", PressureUnit.Psi).TrimEnd('\n').Split('\n').Skip(1).Select(line => line.Split(','))];
        using ParquetFileReader reader = Open();
        using RowGroupReader group = reader.RowGroup(0);
        Assert.Equal(1, reader.FileMetaData.NumRowGroups);
        Assert.Equal(rows.Length - 1, group.MetaData.NumRows);
        Assert.Equal(rows[0], Enumerable.Range(0, rows[0].Length).Select(column => reader.FileMetaData.Schema.Column(column).Name));
        for (int column = 0; column < rows[0].Length; column++)
        {
            string[] expected = [.. rows.Skip(1).Select(row => row[column])];
            if (rows[0][column] is "gear" or "step")
            {
                Assert.Equal(expected, Read<string?>(group, column).Select(cell => cell ?? ""));
                continue;
            }

            double?[] cells = Read<double?>(group, column);
            Assert.Equal(expected.Select(cell => cell.Length == 0), cells.Select(cell => cell is null));
            Assert.All(expected.Zip(cells).Where(pair => pair.Second is not null), pair => Assert.Equal(double.Parse(pair.First, CultureInfo.InvariantCulture), pair.Second!.Value, 6));
        }
    }

    [Fact]
    public void It_says_its_units_its_session_and_the_digest_of_its_records()
    {
        using ParquetFileReader reader = Open();
        IReadOnlyDictionary<string, string> about = reader.FileMetaData.KeyValueMetadata;
        Assert.Equal("S7", about["loggerbox.session"]);
        Assert.Equal(Digest, about["loggerbox.sha256"]);
        Assert.Equal("evil name", about["loggerbox.title"]);
        JsonElement units = JsonDocument.Parse(about["loggerbox.units"]).RootElement;
        Assert.Equal("s", units.GetProperty("time_s").GetString());
        Assert.Equal("psi", units.GetProperty("main_psi").GetString());
    }

    private static ParquetFileReader Open()
    {
        using MemoryStream bytes = new();
        ParquetExport.Write(bytes, SampleReport.Session(), "S7", "evil\u202Ename", Digest, PressureUnit.Psi);
        return new ParquetFileReader(new ParquetSharp.IO.ManagedRandomAccessFile(new MemoryStream(bytes.ToArray())));
    }

    private static T[] Read<T>(RowGroupReader group, int column)
    {
        using LogicalColumnReader<T> cells = group.Column(column).LogicalReader<T>();
        return cells.ReadAll((int)group.MetaData.NumRows);
    }
}
