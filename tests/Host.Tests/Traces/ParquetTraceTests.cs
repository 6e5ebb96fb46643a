using System;
using System.IO;
using System.Linq;
using LoggerBox.Host.Report;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Tests.Report;
using LoggerBox.Host.Traces;
using LoggerBox.Host.Units;
using ParquetSharp;
using Xunit;

namespace LoggerBox.Host.Tests.Traces;

/// <summary>Recordings as Parquet files: our own, and those that the reference implementation writes (ParquetSharp, Apache Arrow's C++ library).</summary>
public class ParquetTraceTests
{
    [Fact]
    public void A_session_written_and_read_again_is_the_same()
    {
        RecordedSession session = SampleReport.Session();
        using MemoryStream bytes = new();
        ParquetExport.Write(bytes, session, "S1", "t", "", PressureUnit.Bar);
        Trace trace = TraceText.Read(bytes.ToArray());
        Assert.Equal(session.Samples.Select(sample => sample.Microseconds - session.Header.StartMicroseconds), trace.Microseconds);
        Assert.Equal(session.Samples.Select(sample => sample.SpeedTenths), trace.SpeedTenths!);
        Trace same = TraceText.Read(CsvExport.Render(session, "t", PressureUnit.Bar));
        Assert.Equal(same.Gears, trace.Gears);
        Assert.Equal(same.Steps, trace.Steps);
        Assert.All(Enumerable.Range(0, trace.Count), row => Assert.Equal(same.Main!.TryGet(row, out double _), trace.Main!.TryGet(row, out double _)));
    }

    [Fact]
    public void Another_writers_numbers_and_moments_are_read_whatever_their_type()
    {
        DateTime start = new(2026, 3, 31, 14, 0, 0, DateTimeKind.Unspecified);
        byte[] file = Written(
            [new Column<DateTime>("When", LogicalType.Timestamp(false, TimeUnit.Micros)), new Column<float?>("P1"), new Column<int>("N"), new Column<string>("Shift"), new Column<bool>("Flag")],
            group =>
            {
                Put(group, [start, start.AddMilliseconds(20)]);
                Put(group, [60.5f, (float?)null]);
                Put(group, [700, 701]);
                Put(group, ["N", "F"]);
                Put(group, [true, false]);
            });
        Trace trace = TraceText.Read(file, source => source with { Columns = ColumnMap.Of(null, ["time_clock=When", "rpm=N", "main_psi=P1", "gear=Shift"]) });
        Assert.Equal([1_774_965_600_000_000, 1_774_965_600_020_000], trace.Microseconds);
        Assert.Equal([7000, 7010], trace.SpeedTenths!);
        Assert.True(trace.Main!.TryGet(0, out double pascal));
        Assert.Equal(60.5 * 6894.757, pascal, 0);
        Assert.False(trace.Main.TryGet(1, out _));
        Assert.Contains(trace.Notes, note => note.Contains("Flag", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(new[] { 0.0, 1.0, 1.0 }, new[] { 1.0, 1.0, 1.0 }, "row 3", "stands still")]
    [InlineData(new[] { 0.0, 1.0, 2.0 }, new[] { 1.0, double.NaN, 1.0 }, "row 2", "no number")]
    [InlineData(new[] { 0.0, 1.0, 2.0 }, new[] { -1.0, 1.0, 1.0 }, "row 1", "sensible range")]
    [InlineData(new double[0], new double[0], "column names", "no rows")]
    public void It_is_refused_as_a_csv_file_is_with_its_row(double[] times, double[] speeds, string row, string saying)
    {
        byte[] file = Written([new Column<double>("time_s"), new Column<double>("rpm")], group =>
        {
            Put(group, times);
            Put(group, speeds);
        });
        var error = Assert.Throws<UserErrorException>(() => TraceText.Read(file));
        Assert.StartsWith($"t.csv, {row}: ", error.Message, StringComparison.Ordinal);
        Assert.Contains(saying, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_damaged_file_is_a_sentence_and_no_more()
    {
        using MemoryStream whole = new();
        ParquetExport.Write(whole, SampleReport.Session(), "S1", "t", "", PressureUnit.Psi);
        byte[] bytes = whole.ToArray();
        var random = new Random(1);
        int refused = 0;
        for (int i = 0; i < 200; i++)
        {
            byte[] damaged = [.. bytes];
            for (int flips = random.Next(1, 6); flips > 0; flips--)
            {
                // The closing index is where a slip does most harm; the four letters at both ends say what the file is.
                damaged[random.Next(2) == 0 ? random.Next(4, damaged.Length - 4) : random.Next(damaged.Length - 600, damaged.Length - 4)] ^= (byte)(1 << random.Next(8));
            }

            try
            {
                TraceText.Read(damaged);
            }
            catch (UserErrorException error)
            {
                refused++;
                Assert.StartsWith("t.csv", error.Message, StringComparison.Ordinal);
            }
        }

        Assert.InRange(refused, 50, 200);
    }

    private static byte[] Written(Column[] columns, Action<RowGroupWriter> rows)
    {
        using MemoryStream bytes = new();
        using (var writer = new ParquetFileWriter(new ParquetSharp.IO.ManagedOutputStream(bytes, leaveOpen: true), columns))
        {
            using (RowGroupWriter group = writer.AppendRowGroup())
            {
                rows(group);
            }

            writer.Close();
        }

        return bytes.ToArray();
    }

    private static void Put<T>(RowGroupWriter group, T[] cells)
    {
        using LogicalColumnWriter<T> column = group.NextColumn().LogicalWriter<T>();
        column.WriteBatch(cells);
    }
}
