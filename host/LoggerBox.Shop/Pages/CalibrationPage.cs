using System;
using System.Collections.Generic;
using System.Globalization;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Shop.Pages;

/// <summary>What the logger holds for its pressure channels, who says so, and until when. Nothing is changed here.</summary>
internal static class CalibrationPage
{
    private static readonly string[] Columns = ["channel", "transducer", "span", "stated error", "calibrated", "against", "certificate", "due"];

    /// <param name="channels">What the logger holds, with what the archive knows of it; null: nothing.</param>
    public static string Render(IReadOnlyList<(CalibrationAnswer Held, ArchivedCalibration? Known)> channels, PressureUnit unit, DateOnly today) => Frame.Render("Calibration", "/calibration", page =>
    {
        page.Element("h1", "Calibration");
        page.Open("table", "list").Element("caption", "What the logger works by, from its next session on").Open("thead").Open("tr");
        foreach (string name in Columns)
        {
            page.Element("th", name, null, ("scope", "col"));
        }

        page.Close("tr").Close("thead").Open("tbody");
        foreach ((CalibrationAnswer held, ArchivedCalibration? known) in channels)
        {
            WriteChannel(page, held, known, unit, today);
        }

        page.Close("tbody").Close("table");
        page.Element("p", "Calibrated with `loggerbox calibrate --port PORT`. Hydraulic pressure at the bench cuts and blinds: eye protection, pressure off before a hose is opened, never feel for a leak.", "remark");
    });

    private static void WriteChannel(Markup page, CalibrationAnswer held, ArchivedCalibration? known, PressureUnit unit, DateOnly today)
    {
        string Pressure(double pascal) => unit.Format(pascal / unit.InPascal());
        page.Open("tr").Element("th", Words.Quantity(CalibrationWords.NameOf(held.Channel)), null, ("scope", "row"));
        if (held.Kind == ChannelKind.None)
        {
            page.Element("td", "nothing connected", null, ("colspan", "7")).Close("tr");
            return;
        }

        page.Element("td", held.Transducer.Length == 0 ? "not written down" : held.Transducer);
        page.Element("td", string.Create(CultureInfo.InvariantCulture, $"{Pressure(held.SpanPascal)} over {held.SpanCounts} counts, zero at {held.ZeroCounts}"));
        page.Element("td", held.AccuracyPascal == 0 ? "not stated" : "± " + Pressure(held.AccuracyPascal));
        page.Element("td", held.UtcSeconds == 0 ? "never: the logger's own values" : Day(DateOnly.FromDateTime(DateTimeOffset.FromUnixTimeSeconds(held.UtcSeconds).DateTime)) + (known is null ? "" : ", " + known.By));
        page.Element("td", known?.Reference ?? (held.Reference.Length == 0 ? "–" : held.Reference));
        page.Element("td", known is null ? "–" : $"{known.Certificate}, {Day(known.CertifiedOn)}, good until {Day(known.ReferenceDue)}");
        page.Open("td");
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
