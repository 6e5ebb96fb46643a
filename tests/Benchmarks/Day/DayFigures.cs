using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Benchmarks.Table;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Sessions;

namespace LoggerBox.Benchmarks.Day;

/// <summary>Eight hours at 100 sample sets a second through the archive: import, verify, judge, report, size; beside a row a sample set, Parquet and Python.</summary>
internal static class DayFigures
{
    private const double Sigma = 2;
    private const int Seed = 1;
    private const int Times = 7;
    private const string Cause = "forward-clutch-leak";

    public static int Run(string[] words)
    {
        using Folder folder = new();
        return Figure.Print(Of(folder));
    }

    public static IEnumerable<Figure> Of(Folder folder)
    {
        byte[] test = TestRecording.Bytes(Cause, Seed);
        DayRecording day = DayRecording.Of(Sigma, new TestRecords(test));
        (long, short[])[] sets = [.. DayRecording.SampleSets(Sigma)];
        double perRow = Spent.On(() => RowPerSample.Import(folder.File("rows.sqlite"), sets)).Clock;
        return Imports(folder, day, perRow)
            .Concat(Archive(folder, test, sets))
            .Concat(Work(folder, sets));
    }

    private static IEnumerable<Figure> Imports(Folder folder, DayRecording day, double perRow)
    {
        int archives = 0;
        DayImports imports = new(day.Frames(), day.Bytes.Length);
        string New() => folder.File($"{archives++}.sqlite");
        Spent atOnce = Spent.Median(Times, () => imports.AtOnce(New()));
        yield return new Figure($"import of {DayRecording.Sets:N0} sample sets from frames, one durable write", atOnce.ToString(), "at most 0.150 s, 25 times as fast", Times25(perRow, atOnce));
        Spent fetched = Spent.Median(Times, () => imports.AsFetched(New()));
        yield return new Figure("the same as a fetch stores them, as quick as they can be read", fetched.ToString(), "at most 0.150 s, 25 times as fast", Times25(perRow, fetched));
        yield return new Figure($"the same, {imports.Pieces} durable writes of 17 KB", Spent.Median(3, () => imports.PieceByPiece(New())).ToString(), "", "the disk's time: a line of 115200 baud spreads them over nine minutes");
    }

    private static IEnumerable<Figure> Archive(Folder folder, byte[] test, (long, short[])[] sets)
    {
        using (ArchiveFile file = ArchiveFile.Open(folder.File("test.sqlite")))
        {
            file.Sessions.Add(test, SessionOrigin.Simulated, "bench", DateTimeOffset.UtcNow);
        }

        ParquetSets.Write(folder.File("sets.parquet"), sets);
        yield return new Figure(
            "archive, bytes a sample set",
            PerSet(folder.File("0.sqlite"), DayRecording.Sets),
            "at most 2.1; a third of Parquet, an eleventh of rows",
            $"Parquet of 16-bit columns, zstd 3: {PerSet(folder.File("sets.parquet"), DayRecording.Sets)}; a row a set: {PerSet(folder.File("rows.sqlite"), DayRecording.Sets)}");
        yield return new Figure("archive of one simulated test alone, bytes a sample set", PerSet(folder.File("test.sqlite"), SessionDecoder.Decode(test).SampleSets));
    }

    private static IEnumerable<Figure> Work(Folder folder, (long, short[])[] sets)
    {
        DayWork work = new(folder.File("0.sqlite"), Cause);
        yield return new Figure("verify: every CRC, every sample set decoded", Spent.Median(Times, work.Verify).ToString(), "at most 0.4 s");
        yield return new Figure(
            "judge from the kept records, read from the archive",
            Spent.Median(Times, () => work.Judged()).ToString(),
            "at most 0.1 s",
            $"finding the holds again, by the logger's own code: {Spent.On(() => DayWork.FindHoldsAgain(sets))}");
        yield return new Figure("report, plots of it all", Spent.Median(Times, work.Reported).ToString(), "at most 1 s", PandasPlot.Of(folder, sets));
    }

    private static string Times25(double perRow, Spent import) => FormattableString.Invariant($"a row a sample set in SQLite: {perRow:0.0} s, {perRow / import.Clock:0.0} times as long");

    private static string PerSet(string path, long sets) => FormattableString.Invariant($"{(double)new FileInfo(path).Length / sets:0.000}");
}
