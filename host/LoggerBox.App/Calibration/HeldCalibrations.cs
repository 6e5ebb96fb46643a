using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.Json;
using LoggerBox.App.Console;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Link;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.App.Calibration;

/// <summary>What the logger holds now, with what the archive knows of it.</summary>
internal static class HeldCalibrations
{
    public static void Show(Terminal terminal, string port, string archive, PressureUnit? unit, bool json)
    {
        using HostLine line = HostLine.Open(port);
        var logger = new LoggerConnection(line);
        uint id = logger.Hello().LoggerId;
        CalibrationAnswer[] held = [.. Enumerable.Range(Channel.Main, 3).Select(logger.GetCalibration)];
        IReadOnlyList<ArchivedCalibration> known = Known(archive, id);
        PressureUnit shown = unit ?? PressureUnit.Kilopascal;
        if (json)
        {
            ListingJson.WriteArray(terminal.Out, held, (writer, one) => Write(writer, one, Of(known, id, one)));
            return;
        }

        foreach (CalibrationAnswer one in held)
        {
            foreach (ReportFact fact in CalibrationWords.Of(one, Of(known, id, one), shown, DateOnly.FromDateTime(DateTime.Now)))
            {
                terminal.Out.WriteLine($"{fact.Label,-10} {PlainText.Of(fact.Value ?? "")}");
            }
        }
    }

    private static IReadOnlyList<ArchivedCalibration> Known(string archive, uint logger)
    {
        if (!ArchiveFile.MayBeThere(archive))
        {
            return [];
        }

        using ArchiveFile file = ArchiveFile.OpenForReading(archive);
        return file.Calibrations.Of(logger);
    }

    private static ArchivedCalibration? Of(IReadOnlyList<ArchivedCalibration> known, uint logger, CalibrationAnswer held) => CalibrationWords.Newest(known, logger, held);

    private static void Write(Utf8JsonWriter writer, CalibrationAnswer held, ArchivedCalibration? known)
    {
        writer.WriteStartObject();
        writer.WriteString("channel", ChannelNames.Of(held.Channel));
        writer.WriteBoolean("connected", held.Kind != ChannelKind.None);
        writer.WriteNumber("zero_counts", held.ZeroCounts);
        writer.WriteNumber("span_counts", held.SpanCounts);
        writer.WriteNumber("span_pa", held.SpanPascal);
        writer.WriteNumber("accuracy_pa", held.AccuracyPascal);
        writer.WriteString("transducer", held.Transducer);
        writer.WriteString("reference", known?.Reference ?? held.Reference);
        writer.WriteString("certificate", known?.Certificate);
        writer.WriteString("certified_on", known?.CertifiedOn?.ToString("yyyy-MM-dd"));
        writer.WriteString("reference_due", known?.ReferenceDue?.ToString("yyyy-MM-dd"));
        writer.WriteString("due", known?.Due?.ToString("yyyy-MM-dd"));
        writer.WriteString("by", known?.By);
        ListingJson.Moment(writer, "calibrated", held.UtcSeconds == 0 ? null : DateTimeOffset.FromUnixTimeSeconds(held.UtcSeconds));
        writer.WriteEndObject();
    }
}
