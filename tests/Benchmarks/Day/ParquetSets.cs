using System;
using System.Linq;
using LoggerBox.Protocol.Records;
using ParquetSharp;

namespace LoggerBox.Benchmarks.Day;

/// <summary>The same sample sets as columns in a Parquet file, by Apache Arrow's C++ library.</summary>
internal static class ParquetSets
{
    private static readonly string[] Names = ["rpm", "main", "clutch", "converter"];

    public static void Write(string path, (long Microseconds, short[] Counts)[] sets)
    {
        Column[] columns = [new Column<long>("us"), .. Names.Select(name => new Column<short>(name))];
        using WriterPropertiesBuilder builder = new();
        using WriterProperties properties = builder.Compression(Compression.Zstd).Build();
        using ParquetFileWriter file = new(path, columns, properties);
        using RowGroupWriter group = file.AppendRowGroup();
        using (LogicalColumnWriter<long> times = group.NextColumn().LogicalWriter<long>())
        {
            times.WriteBatch(Array.ConvertAll(sets, set => set.Microseconds));
        }

        for (int channel = 0; channel < Channel.Count; channel++)
        {
            using LogicalColumnWriter<short> values = group.NextColumn().LogicalWriter<short>();
            values.WriteBatch(Array.ConvertAll(sets, set => set.Counts[channel]));
        }

        file.Close();
    }
}
