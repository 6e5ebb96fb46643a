using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Subjects;

/// <summary>With what it was measured: each transducer, its reference and certificate, and whether that was still good on the day.</summary>
internal static class InstrumentWords
{
    // 4 to 20 mA over 100 ohm at 1.25 uA a count.
    private const double CountsOfTheLoop = 12_800;

    public static IEnumerable<ReportFact> Of(IReadOnlyList<SubjectRecording> recordings, PressureUnit unit, DateTimeOffset now)
    {
        foreach (IGrouping<uint, SubjectRecording> logger in recordings.GroupBy(recording => recording.Session.Header.LoggerId))
        {
            string sessions = string.Join("; ", logger.Select(recording => recording.Name));
            yield return new ReportFact("Logger", logger.Key == 0 ? $"recording of another instrument ({sessions})" : $"{logger.Key:X8} ({sessions})");
            ReportFact[] facts = [.. logger.SelectMany(recording => Channels(recording, unit, now)).Distinct()];
            foreach (ReportFact fact in facts)
            {
                yield return fact;
            }
        }
    }

    /// <summary>"against tester, certificate 12 of 2026-01-02": what stands behind a calibration, with every word that was given.</summary>
    public static string Against(ArchivedCalibration one) =>
        $"against {Given(one.Reference)}, certificate {Given(one.Certificate)}{(one.CertifiedOn is DateOnly day ? " of " + Day(day) : "")}"
        + (one.ReferenceDue is DateOnly due ? $" (good until {Day(due)})" : "");

    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static IEnumerable<ReportFact> Channels(SubjectRecording recording, PressureUnit unit, DateTimeOffset now)
    {
        SessionHeader header = recording.Session.Header;
        for (int channel = Channel.Main; channel < Channel.Count; channel++)
        {
            ChannelCalibration held = header.Pressures[channel - 1];
            if (held.Kind == ChannelKind.None)
            {
                continue;
            }

            string name = ReportWords.Capital(Words.Quantity(NameOf(channel)));
            ArchivedCalibration? known = Known(recording, channel, held);
            yield return new ReportFact(name, Text(known, held, unit));
            if (known is not null && Overdue(known, recording, now) is { Length: > 0 } overdue)
            {
                yield return new ReportFact(name, overdue, IsLoud: true);
            }
        }
    }

    /// <summary>
    /// The one with the session's very figures, the newest that was made before it: the same figures twice are rare. A logger's clock may be wrong, so
    /// that the only one seems to be of later.
    /// </summary>
    private static ArchivedCalibration? Known(SubjectRecording recording, int channel, ChannelCalibration held)
    {
        ArchivedCalibration[] same = [.. recording.Calibrations.Where(one => one.IsOf(recording.Session.Header.LoggerId, channel, held))];
        return same.LastOrDefault(one => recording.Row?.Start is not DateTimeOffset start || one.Made <= start) ?? same.FirstOrDefault();
    }

    private static string Text(ArchivedCalibration? known, ChannelCalibration held, PressureUnit unit)
    {
        string range = held.Kind == ChannelKind.CurrentLoop
            ? $"4 to 20 mA for {Figure.WithUnit(held.SpanPascal * CountsOfTheLoop / held.SpanCounts / unit.InPascal(), unit.Code())}"
            : "pressure as recorded";
        return known is null
            ? $"{range}; no calibration of it on record here"
            : $"{Given(known.Transducer)}, {range}; calibrated {known.Made.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)} by {known.By} {Against(known)}; due {(known.Due is DateOnly due ? Day(due) : "not written down")}";
    }

    private static string Overdue(ArchivedCalibration known, SubjectRecording recording, DateTimeOffset now)
    {
        if (known.Due is not DateOnly due)
        {
            return "";
        }

        DateTimeOffset? start = recording.Row?.Start;
        if (DateOnly.FromDateTime((start ?? now).Date) > due)
        {
            return $"▶ CALIBRATION OVERDUE since {Day(due)}{(start is null ? "" : ", before it was recorded")}";
        }

        return DateOnly.FromDateTime(now.Date) > due ? $"▶ CALIBRATION OVERDUE since {Day(due)}; it was good when this was recorded" : "";
    }

    private static string NameOf(int channel) => channel switch { Channel.Main => "main", Channel.Clutch => "clutch", _ => "converter" };

    private static string Given(string text) => text.Length == 0 ? "not named" : text;
}
