using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Shop.Pages;

/// <summary>What the logger holds for its pressure channels, or the archive knows of them, who says so, and until when. Nothing is changed here.</summary>
internal static class CalibrationPage
{
    private static readonly string[] Columns = ["channel", "transducer", "set to", "stated error", "calibrated", "against", "certificate", "due"];

    /// <param name="channels">What the logger holds, with what the archive knows of it; null: nothing.</param>
    public static string Render(IReadOnlyList<(CalibrationAnswer Held, ArchivedCalibration? Known)> channels, PressureUnit unit, DateOnly today) => Render(page =>
    {
        WriteHead(page, "What the logger works by, from its next session on");
        foreach ((CalibrationAnswer held, ArchivedCalibration? known) in channels)
        {
            WriteChannel(page, held, known, unit, today);
        }

        page.Close("tbody").Close("table").CloseScroller();
    });

    /// <param name="known">Of each logger's channels the last calibration: no logger is connected that could be asked.</param>
    public static string Render(IReadOnlyList<ArchivedCalibration> known, PressureUnit unit, DateOnly today) => Render(page =>
    {
        page.Element("p", "No logger is connected to this page: this is what the archive knows. Start the page with `loggerbox serve --logger PORT` to see what a logger holds.", "remark");
        if (known.Count == 0)
        {
            page.Element("p", "The archive knows of no calibration yet.");
        }

        foreach (IGrouping<uint, ArchivedCalibration> logger in known.GroupBy(one => one.LoggerId))
        {
            WriteHead(page, $"Logger {logger.Key:X8}, each channel's last calibration");
            foreach (ArchivedCalibration one in logger)
            {
                page.Open("tr").Element("th", Words.Quantity(CalibrationWords.NameOf(one.Channel)), null, ("scope", "row"));
                page.Element("td", one.Transducer.Length == 0 ? "not written down" : one.Transducer);
                page.Element("td", CalibrationWords.Range(ChannelKind.CurrentLoop, one.ZeroCounts, one.SpanCounts, one.SpanPascal, unit));
                WriteRest(page, one.AccuracyPascal, $"{Day(DateOnly.FromDateTime(one.Made.Date))}, {one.By}", "", one, unit, today);
            }

            page.Close("tbody").Close("table").CloseScroller();
        }
    });

    private static string Render(Action<Markup> content) => Frame.Render("Calibration", "/calibration", page =>
    {
        page.Element("h1", "Calibration");
        content(page);
        page.Element("p", "Calibrated with `loggerbox calibrate --port PORT`. Hydraulic pressure at the bench cuts and blinds: eye protection, pressure off before a hose is opened, never feel for a leak.", "remark");
    });

    private static void WriteHead(Markup page, string caption)
    {
        page.OpenScroller(caption).Open("table", "list").Element("caption", caption).Open("thead").Open("tr");
        foreach (string name in Columns)
        {
            page.Element("th", name, null, ("scope", "col"));
        }

        page.Close("tr").Close("thead").Open("tbody");
    }

    private static void WriteChannel(Markup page, CalibrationAnswer held, ArchivedCalibration? known, PressureUnit unit, DateOnly today)
    {
        page.Open("tr").Element("th", Words.Quantity(CalibrationWords.NameOf(held.Channel)), null, ("scope", "row"));
        if (held.Kind == ChannelKind.None)
        {
            page.Element("td", "nothing connected", null, ("colspan", "7")).Close("tr");
            return;
        }

        page.Element("td", held.Transducer.Length == 0 ? "not written down" : held.Transducer);
        page.Element("td", CalibrationWords.Range(held.Kind, held.ZeroCounts, held.SpanCounts, held.SpanPascal, unit));
        string calibrated = held.UtcSeconds == 0
            ? "never: the logger's own values"
            : Day(DateOnly.FromDateTime(DateTimeOffset.FromUnixTimeSeconds(held.UtcSeconds).DateTime)) + (known is null ? "" : ", " + known.By);
        WriteRest(page, held.AccuracyPascal, calibrated, held.Reference, known, unit, today);
    }

    private static void WriteRest(Markup page, int accuracyPascal, string calibrated, string reference, ArchivedCalibration? known, PressureUnit unit, DateOnly today)
    {
        page.Element("td", accuracyPascal == 0 ? "not stated" : "± " + Figure.WithUnit(accuracyPascal / unit.InPascal(), unit.Code())).Element("td", calibrated);
        page.Element("td", known?.Reference ?? (reference.Length == 0 ? "–" : reference));
        page.Element("td", known is null ? "–" : $"{known.Certificate}, {Day(known.CertifiedOn)}, good until {Day(known.ReferenceDue)}").Open("td");
        WriteDue(page, known, today);
        page.Close("td").Close("tr");
    }

    private static void WriteDue(Markup page, ArchivedCalibration? known, DateOnly today)
    {
        if (CalibrationWords.IsOverdue(known, today))
        {
            page.Element("span", "▶ OVERDUE", "verdict outside").Text(" " + Day(known!.Due));
            return;
        }

        page.Text(known is null ? "not known" : Day(known.Due));
    }

    private static string Day(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "–";
}
