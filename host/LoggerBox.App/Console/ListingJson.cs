using System;
using System.Collections.Generic;
using System.IO;
using System.Text.Json;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Comparing;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Judging.FromJobs;
using LoggerBox.Host.Judging.Looking;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.App.Console;

/// <summary>Sessions for other programs; times as ISO 8601 with the shop's offset, a missing value is null.</summary>
internal static class ListingJson
{
    public static void WriteArray<T>(TextWriter output, IEnumerable<T> items, Action<Utf8JsonWriter, T> one) => JsonText.Write(output, writer =>
    {
        writer.WriteStartArray();
        foreach (T item in items)
        {
            one(writer, item);
        }

        writer.WriteEndArray();
    });

    public static void Seen(Utf8JsonWriter writer, Seen one)
    {
        writer.WriteStartObject();
        writer.WriteString("kind", one.Kind);
        writer.WriteString("gear", Words.GearCode(one.Gear));
        writer.WriteBoolean("above_idle", one.AboveIdle);
        writer.WriteReading("start_s", one.StartSeconds);
        writer.WriteReading("value", one.Value);
        writer.WriteReading("usual", one.Usual);
        writer.WriteReading("oddness", one.Oddness is double odd && double.IsFinite(odd) ? odd : null);
        writer.WriteBoolean("odd", one.IsOdd);
        writer.WriteEndObject();
    }

    public static void History(Utf8JsonWriter writer, ReadingHistory history, PressureUnit unit)
    {
        (_, string code, double scale) = HistoryWords.Of(history.Place, unit);
        writer.WriteStartObject();
        writer.WriteString("reading", history.Place);
        writer.WriteString("unit", code);
        writer.WriteStartArray("values");
        foreach ((string visit, SheetReading reading) in history.Readings)
        {
            writer.WriteStartObject();
            writer.WriteString("job", visit);
            writer.WriteReading("value", reading.Value * scale);
            writer.WriteReading("uncertainty", reading.Uncertainty * scale);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteReading("change", history.Change * scale);
        writer.WriteReading("uncertainty", history.Uncertainty * scale);
        writer.WriteBoolean("changed", history.Changed);
        writer.WriteReading("slope_1000h", history.Slope * scale);
        writer.WriteReading("slope_uncertainty_1000h", history.SlopeUncertainty * scale);
        writer.WriteBoolean("drifts", history.Drifts);
        writer.WriteEndObject();
    }

    public static void Session(Utf8JsonWriter writer, ArchivedSession session, RecordedSession? damaged)
    {
        writer.WriteStartObject();
        writer.WriteString("id", session.Id);
        writer.WriteNumber("logger", session.Identity.LoggerId);
        writer.WriteNumber("boot", session.Identity.BootCount);
        writer.WriteNumber("number", session.Identity.SessionNumber);
        writer.WriteString("origin", session.Origin.ToString().ToLowerInvariant());
        writer.WriteString("source", session.Source);
        Moment(writer, "stored", session.Stored);
        Moment(writer, "start", session.Start);
        writer.WriteBoolean("complete", session.Complete);
        writer.WriteBoolean("ended", session.Ended);
        writer.WriteNumber("duration_s", session.Duration.TotalSeconds);
        writer.WriteNumber("sample_sets", session.SampleSets);
        writer.WriteNumber("holds", session.Holds);
        writer.WriteStrings("steps", SessionsVerb.StepsOf(session));
        writer.WriteNumber("length", session.Length);
        writer.WriteNumber("received", session.Received);
        writer.WriteNumber("damaged_records", session.Damage.Records);
        writer.WriteNumber("damaged_bytes", session.Damage.Bytes);
        writer.WriteStartArray("gaps");
        foreach (SessionGap gap in damaged?.Gaps ?? [])
        {
            Gap(writer, gap, damaged!.Header.StartMicroseconds);
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Gap(Utf8JsonWriter writer, SessionGap gap, long start)
    {
        writer.WriteStartObject();
        Number(writer, "from_s", (gap.FromMicroseconds - start) / 1e6);
        Number(writer, "to_s", (gap.ToMicroseconds - start) / 1e6);
        Number(writer, "duration_s", gap.Duration?.TotalSeconds);
        writer.WriteNumber("records", gap.Records);
        writer.WriteNumber("bytes", gap.Bytes);
        writer.WriteEndObject();
    }

    public static void Moment(Utf8JsonWriter writer, string name, DateTimeOffset? time)
    {
        if (time is DateTimeOffset known)
        {
            writer.WriteString(name, known);
        }
        else
        {
            writer.WriteNull(name);
        }
    }

    public static void Number(Utf8JsonWriter writer, string name, double? value)
    {
        if (value is double known)
        {
            writer.WriteNumber(name, known);
        }
        else
        {
            writer.WriteNull(name);
        }
    }
}
