using System;
using System.IO;
using System.Text.Json;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Comparing;

/// <summary>A comparison as one JSON object, format "loggerbox-comparison/1": a missing value is null, never 0.</summary>
public static class ComparisonJson
{
    public const string Format = "loggerbox-comparison/1";

    public static void Write(Comparison comparison, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        JsonText.Write(writer, json => Content(json, comparison));
    }

    private static void Content(Utf8JsonWriter json, Comparison comparison)
    {
        json.WriteStartObject();
        json.WriteString("format", Format);
        json.WriteString("unit", comparison.Unit.Code());
        json.WriteString("truck", comparison.After.Truck);
        json.WriteString("outcome", ComparisonText.Headline(comparison));
        json.WriteStartArray("readings");
        foreach (ReadingChange row in comparison.Readings)
        {
            Reading(json, row);
        }

        json.WriteEndArray();
        json.WriteStrings("suspects_gone", comparison.Gone);
        json.WriteStrings("suspects_still", comparison.Still);
        json.WriteStrings("suspects_new", comparison.New);
        json.WriteStrings("notes", comparison.Notes);
        json.WriteEndObject();
    }

    private static void Reading(Utf8JsonWriter json, ReadingChange row)
    {
        json.WriteStartObject();
        json.WriteString("step", row.Step);
        json.WriteString("quantity", row.Quantity);
        json.WriteString("unit", row.Unit);
        Side(json, "before", row.Before);
        Side(json, "after", row.After);
        json.WriteReading("change", row.Change);
        json.WriteReading("uncertainty", row.Uncertainty);
        if (row.IsReal is { } isReal)
        {
            json.WriteBoolean("changed", isReal);
        }
        else
        {
            json.WriteNull("changed");
        }

        json.WriteEndObject();
    }

    private static void Side(Utf8JsonWriter json, string name, ReadingRow? row)
    {
        if (row is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        json.WriteReading("value", row.Value);
        json.WriteReading("uncertainty", row.Uncertainty);
        json.WriteString("verdict", row.Verdict is { } verdict ? JudgementJson.Code(verdict) : null);
        json.WriteEndObject();
    }
}
