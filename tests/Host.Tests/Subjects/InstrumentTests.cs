using System;
using System.IO;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Report.Pdf;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Host.Tests.Subjects;

/// <summary>What a report says of the instrument: reference, certificate, and whether the calibration was still good on the day, 2026-09-21.</summary>
public sealed class InstrumentTests : IDisposable
{
    private const uint Logger = 0xAB12;
    private static readonly DateTimeOffset Now = new(2026, 11, 28, 9, 0, 0, TimeSpan.Zero);

    private readonly TemporaryFolder folder = new();
    private readonly ArchiveFile archive;

    public InstrumentTests()
    {
        archive = ArchiveFile.Open(folder.File("archive.sqlite"));
        archive.Sessions.Add(Session(), SessionOrigin.Fetched, "COM3", Now);
    }

    public void Dispose()
    {
        archive.Dispose();
        folder.Dispose();
    }

    [Theory]
    [InlineData("2026-08-31", "▶ CALIBRATION OVERDUE since 2026-08-31, before it was recorded")]
    [InlineData("2026-10-31", "▶ CALIBRATION OVERDUE since 2026-10-31; it was good when this was recorded")]
    public void A_calibration_that_is_overdue_is_printed_loudly_on_every_report(string due, string said)
    {
        archive.Calibrations.Add([Calibration(due)]);
        ReportDocument report = Report();
        ReportFact loud = Assert.Single(report.Front.SelectMany(section => section.Facts), fact => fact.IsLoud);
        Assert.Equal(("Main pressure", said), (loud.Label, loud.Value));
        Assert.Contains(said, System.Net.WebUtility.HtmlDecode(HtmlReport.Render(report)), StringComparison.Ordinal);
        Assert.Contains(said, Text(report).ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.NotEmpty(PdfReport.Render(report));
    }

    [Fact]
    public void One_that_is_good_names_transducer_range_reference_certificate_and_who()
    {
        archive.Calibrations.Add([Calibration("2027-06-30")]);
        ReportFact[] facts = [.. Report().Front.Single(section => section.Heading == "Instrument").Facts];
        Assert.DoesNotContain(facts, fact => fact.IsLoud);

        // 3,447,379 Pa over 12800 counts: 500.0 psi from 4 to 20 mA (NIST SP 811).
        Assert.Equal(
            "TX-5, 4 to 20 mA for 500.0 psi; calibrated 2026-05-04 by A. Fitter against DW-1, certificate C-77 of 2026-01-10 (good until 2027-01-10); due 2027-06-30",
            facts.Single(fact => fact.Label == "Main pressure").Value);
        Assert.Contains("no calibration of it on record here", facts.Single(fact => fact.Label == "Clutch pressure").Value, StringComparison.Ordinal);
        Assert.DoesNotContain(facts, fact => fact.Label == "Converter pressure");
        Assert.Equal("0000AB12 (session S1)", facts[0].Value);
    }

    [Fact]
    public void Of_two_with_the_same_figures_the_one_before_the_session_counts_and_one_with_others_never()
    {
        archive.Calibrations.Add(
        [
            Calibration("2027-06-30"), Calibration("2027-07-31") with { Made = Now, Reference = "later" }, Calibration("2027-08-31") with { ZeroCounts = 3211, Reference = "other" },
        ]);
        string main = Report().Front.SelectMany(section => section.Facts).Single(fact => fact.Label == "Main pressure").Value!;
        Assert.Contains("due 2027-06-30", main, StringComparison.Ordinal);
    }

    [Fact]
    public void The_records_digest_is_that_of_their_bytes()
    {
        string digest = Report().Front.Single(section => section.Heading == "Records behind it").Facts.Single().Value!;
        byte[] bytes = Session();
        Assert.Equal($"{bytes.Length} bytes, CRC-32C {archive.Sessions.Find("S1").Crc:x8}, SHA-256 {Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes))}", digest);
    }

    [Fact]
    public void What_anybody_wrote_into_a_calibration_stays_text()
    {
        const string Hostile = "<script>alert(1)</script>\u202E=HYPERLINK(\"x\")\e[31m";
        archive.Calibrations.Add([Calibration("2026-08-31") with { Reference = Hostile, Certificate = Hostile, Transducer = Hostile, By = Hostile }]);
        ReportDocument report = Report();
        string page = HtmlReport.Render(report);
        string text = Text(report);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.All((string[])[page, text], one => Assert.DoesNotMatch("[\u202E\e]", one));
        Assert.NotEmpty(PdfReport.Render(report));
    }

    private ReportDocument Report()
    {
        Subject subject = ArchivedSubjects.OfSession(archive, "S1");
        DataSheet sheet = ArchivedSubjects.SheetOrBlank(null);
        return subject.Report(Judge.Of(subject.Sessions, sheet, subject.Facts, PressureUnit.Psi), sheet, Now);
    }

    private static string Text(ReportDocument report)
    {
        using StringWriter output = new();
        new TextReport(output, colour: false).Write(report);
        return System.Text.RegularExpressions.Regex.Replace(output.ToString(), @"\s+", " ");
    }

    private static ArchivedCalibration Calibration(string due) => new(
        Logger, Channel.Main, 3196, 12800, 3_447_379, 8600, "TX-5", "DW-1", "C-77", new DateOnly(2026, 1, 10), new DateOnly(2027, 1, 10), DateOnly.Parse(due), "A. Fitter",
        "319600 0;1472000 3102641", new DateTimeOffset(2026, 5, 4, 8, 0, 0, TimeSpan.Zero));

    private static byte[] Session()
    {
        SessionHeader header = new() { LoggerId = Logger, BootCount = 3, SessionNumber = 7, StartMicroseconds = 1_000_000, StartUtcSeconds = 1_790_000_000, SampleIntervalMicroseconds = 20_000 };
        foreach (int channel in (int[])[Channel.Main, Channel.Clutch])
        {
            ChannelCalibration held = header.Pressures[channel - 1];
            (held.Kind, held.ZeroCounts, held.SpanCounts, held.SpanPascal) = (ChannelKind.CurrentLoop, 3196, 12800, 3_447_379);
        }

        RecordWriter writer = new();
        using MemoryStream bytes = new();
        bytes.Write(writer.Bytes, 0, writer.Write(header, 7, 3, 0));
        bytes.Write(writer.Bytes, 0, writer.Write(new SessionEnd { Microseconds = 2_000_000, Reason = SessionEndReason.Button }, 7, 3, 1));
        return bytes.ToArray();
    }
}
