using System;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Subjects;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.TruckSimulator.Demo;

namespace LoggerBox.Benchmarks.Day;

/// <summary>Eight hours at 100 sample sets a second through the archive: import, verify, judge, report, size; beside a row a sample set.</summary>
internal static class DayTable
{
    private const double Sigma = 2;
    private const int Seed = 1;
    private const int Times = 5;

    public static int Run(string[] words)
    {
        string folder = Directory.CreateTempSubdirectory("loggerbox-day-").FullName;
        try
        {
            Measure(folder);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        return 0;
    }

    private static void Measure(string folder)
    {
        byte[] test = TestRecording.Bytes("forward-clutch-leak", Seed);
        DayRecording day = DayRecording.Of(Sigma, new TestRecords(test));
        byte[] frames = day.Frames();
        Console.WriteLine($"{DayRecording.Sets} sample sets, {day.Bytes.Length} bytes of records, {frames.Length} on the line; sigma {Sigma} counts. Median of {Times}.");
        int archives = 0;
        double import = Median(() => Import(frames, day.Bytes.Length, Path.Combine(folder, $"{archives++}.sqlite")));
        Print("import from frames", import, "s", "at most 0.150");
        string path = Path.Combine(folder, "0.sqlite");
        Size("archive", path, DayRecording.Sets);
        Print("verify: every CRC, every sample set decoded", Median(() => Verify(path)), "s", "at most 0.4");
        Print("judge from the kept records", Median(() => Judged(path)), "s", "at most 0.1");
        Print("report, plots of it all", Median(() => Reported(path)), "s", "at most 1");

        string simulated = Path.Combine(folder, "simulated.sqlite");
        using (ArchiveFile file = ArchiveFile.Open(simulated))
        {
            file.Sessions.Add(test, SessionOrigin.Simulated, "bench", DateTimeOffset.UtcNow);
        }

        Size("archive of one simulated test", simulated, SessionDecoder.Decode(test).SampleSets);
        string rows = Path.Combine(folder, "rows.sqlite");
        (long, short[])[] sets = [.. DayRecording.SampleSets(Sigma)];
        double perRow = Seconds(() => RowPerSample.Import(rows, sets));
        Print("a row a sample set: import", perRow, "s", "");
        Size("a row a sample set: file", rows, DayRecording.Sets);
        Print("import, times faster than a row a sample set", perRow / import, "", "at least 25");
    }

    private static void Import(byte[] frames, int length, string path)
    {
        using ArchiveFile file = ArchiveFile.Open(path);
        FrameDecoder decoder = new();
        Data data = new();
        using ArrivingParts parts = new(file, file.Incoming.Begin(new SessionIdentity(1, 1, 1), length, SessionOrigin.Fetched, "bench", DateTimeOffset.UtcNow));
        foreach (byte one in frames)
        {
            if (decoder.Accept(one) && decoder.Content.ReadByte() == (byte)MessageCode.Data && data.TryRead(decoder.Content))
            {
                parts.Add(data.Offset, data.Payload.AsSpan(0, data.Length));
            }
        }

        Check(parts.Complete().Complete);
    }

    private static void Verify(string path)
    {
        using ArchiveFile file = ArchiveFile.OpenForReading(path);
        DecodedSession decoded = SessionDecoder.Decode(file.Sessions.Bytes("S1"));
        Check(decoded.SampleSets == DayRecording.Sets && decoded.Damage == new SessionDamage(0, 0, 0));
    }

    private static Judgement Judged(string path)
    {
        (Subject subject, DataSheet sheet) = Subject(path);
        Judgement judgement = Judge.Of(subject.Sessions, sheet, subject.Facts, sheet.Unit);
        Check(judgement.Suspects.Any(suspect => suspect.Code == "forward-clutch-leak"));
        return judgement;
    }

    private static void Reported(string path)
    {
        (Subject subject, DataSheet sheet) = Subject(path);
        ReportDocument report = subject.Report(Judge.Of(subject.Sessions, sheet, subject.Facts, sheet.Unit), sheet, DateTimeOffset.UtcNow);
        Check(HtmlReport.Render(report).Length > 10_000);
    }

    private static (Subject Subject, DataSheet Sheet) Subject(string path)
    {
        using ArchiveFile file = ArchiveFile.OpenForReading(path);
        return (ArchivedSubjects.OfSession(file, "S1"), DataSheetReader.Parse(SampleSheet.Text(), SampleSheet.FileName));
    }

    private static void Size(string name, string path, long sets)
    {
        long bytes = new FileInfo(path).Length;
        Print(name + ", bytes a sample set", (double)bytes / sets, "", name == "archive" ? "at most 2.1" : "");
    }

    private static double Median(Action work)
    {
        double[] seconds = [.. Enumerable.Range(0, Times).Select(_ => Seconds(work)).Order()];
        return seconds[Times / 2];
    }

    private static double Seconds(Action work)
    {
        Stopwatch watch = Stopwatch.StartNew();
        work();
        return watch.Elapsed.TotalSeconds;
    }

    private static void Check(bool isRight)
    {
        if (!isRight)
        {
            throw new InvalidOperationException("The bench's own work came out wrong; its times mean nothing.");
        }
    }

    private static void Print(string name, double value, string unit, string must) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {name} | {value:0.000} {unit} | {must} |"));
}
