using System;
using System.Collections.Generic;
using System.Globalization;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Shop.Pages;

/// <summary>What the logger holds for its pressure channels, and who says so. Nothing is changed here.</summary>
internal static class CalibrationPage
{
    public static string Render(IReadOnlyList<CalibrationAnswer> channels, PressureUnit unit) => Frame.Render("Calibration", "/calibration", page =>
    {
        page.Element("h1", "Calibration");
        page.Open("table", "list").Element("caption", "What the logger works by, from its next session on").Open("thead").Open("tr");
        foreach (string name in (string[])["channel", "transducer", "span", "stated error", "calibrated", "against"])
        {
            page.Element("th", name, null, ("scope", "col"));
        }

        page.Close("tr").Close("thead").Open("tbody");
        foreach (CalibrationAnswer channel in channels)
        {
            WriteChannel(page, channel, unit);
        }

        page.Close("tbody").Close("table");
    });

    private static void WriteChannel(Markup page, CalibrationAnswer channel, PressureUnit unit)
    {
        string Pressure(double pascal) => unit.Format(pascal / unit.InPascal());
        page.Open("tr").Element("th", NameOf(channel.Channel), null, ("scope", "row"));
        if (channel.Kind == ChannelKind.None)
        {
            page.Element("td", "nothing connected", null, ("colspan", "5")).Close("tr");
            return;
        }

        page.Element("td", channel.Transducer.Length == 0 ? "not written down" : channel.Transducer);
        page.Element("td", string.Create(CultureInfo.InvariantCulture, $"{Pressure(channel.SpanPascal)} over {channel.SpanCounts} counts, zero at {channel.ZeroCounts}"));
        page.Element("td", channel.AccuracyPascal == 0 ? "not stated" : "± " + Pressure(channel.AccuracyPascal));
        page.Element("td", channel.UtcSeconds == 0 ? "never: the logger's own values" : DateTimeOffset.FromUnixTimeSeconds(channel.UtcSeconds).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        page.Element("td", channel.Reference.Length == 0 ? "–" : channel.Reference).Close("tr");
    }

    private static string NameOf(int channel) => channel switch
    {
        Channel.Main => Words.Quantity("main"),
        Channel.Clutch => Words.Quantity("clutch"),
        _ => Words.Quantity("converter"),
    };
}
