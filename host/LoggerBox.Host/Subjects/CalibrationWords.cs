using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Subjects;

/// <summary>What a logger holds for a channel, in words, with the reference and certificate that the archive knows.</summary>
public static class CalibrationWords
{
    // 4 to 20 mA over 100 ohm at 1.25 uA a count.
    private const double CountsOfTheLoop = 12_800;
    private const double MilliamperesACount = 0.00125;

    /// <summary>What a channel is set to, in what a bench can measure: "4 to 20 mA for 500.0 psi, no pressure at 4.00 mA".</summary>
    public static string Range(ChannelKind kind, int zeroCounts, int spanCounts, int spanPascal, PressureUnit unit) => kind != ChannelKind.CurrentLoop || spanCounts == 0
        ? "pressure as recorded"
        : string.Create(
            CultureInfo.InvariantCulture,
            $"4 to 20 mA for {Figure.WithUnit(spanPascal * CountsOfTheLoop / spanCounts / unit.InPascal(), unit.Code())}, no pressure at {zeroCounts * MilliamperesACount:0.00} mA");

    public static string NameOf(int channel) => channel switch { Channel.Main => "main", Channel.Clutch => "clutch", _ => "converter" };

    /// <summary>The newest row with the very figures that the logger holds; null: they were found elsewhere.</summary>
    public static ArchivedCalibration? Newest(IEnumerable<ArchivedCalibration> known, uint logger, CalibrationAnswer held)
    {
        ArgumentNullException.ThrowIfNull(held);
        var figures = new ChannelCalibration();
        held.CopyTo(figures);
        return known.LastOrDefault(one => one.IsOf(logger, held.Channel, figures));
    }

    /// <summary>One line, and a second, loud one where it is overdue.</summary>
    public static IEnumerable<ReportFact> Of(CalibrationAnswer held, ArchivedCalibration? known, PressureUnit unit, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(held);
        string name = NameOf(held.Channel);
        if (held.Kind == ChannelKind.None)
        {
            yield return new ReportFact(name, "nothing connected");
            yield break;
        }

        string figures = string.Create(CultureInfo.InvariantCulture, $"{unit.Format(held.SpanPascal / unit.InPascal())} over {held.SpanCounts} counts, zero at {held.ZeroCounts}");
        string transducer = held.Transducer.Length == 0 ? "transducer not written down" : held.Transducer;
        yield return new ReportFact(name, $"{transducer}: {figures}; {Source(held, known)}");
        if (IsOverdue(known, today))
        {
            yield return new ReportFact(name, $"▶ CALIBRATION OVERDUE since {InstrumentWords.Day(known!.Due!.Value)}", IsLoud: true);
        }
    }

    public static bool IsOverdue(ArchivedCalibration? known, DateOnly today) => known?.Due is DateOnly due && today > due;

    /// <summary>When, by whom and against what; what is not known is said.</summary>
    public static string Source(CalibrationAnswer held, ArchivedCalibration? known)
    {
        ArgumentNullException.ThrowIfNull(held);
        if (held.UtcSeconds == 0)
        {
            return "never calibrated: the logger's own values";
        }

        string day = DateTimeOffset.FromUnixTimeSeconds(held.UtcSeconds).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return known is null
            ? $"calibrated {day} against {(held.Reference.Length == 0 ? "what nobody wrote down" : held.Reference)}; when it is due again is not on record here"
            : $"calibrated {day} by {known.By} {InstrumentWords.Against(known)}; due {(known.Due is DateOnly due ? InstrumentWords.Day(due) : "not written down")}";
    }
}
