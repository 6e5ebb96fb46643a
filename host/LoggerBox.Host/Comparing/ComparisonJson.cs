using System;
using System.Collections.Generic;
using System.IO;
using System.Text;
using System.Text.Json;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Comparing;

/// <summary>A comparison as one JSON object, format "loggerbox-comparison/1": a missing value is null, never 0.</summary>
public static class ComparisonJson
{
    public const string Format = "loggerbox-comparison/1";

    private static readonly JsonWriterOptions Options = new() { Indented = true };

    public static void Write(Comparison comparison, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(writer);
        using MemoryStream bytes = new();
        using (Utf8JsonWriter json = new(bytes, Options))
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
            Strings(json, "suspects_gone", comparison.Gone);
            Strings(json, "suspects_still", comparison.Still);
            Strings(json, "suspects_new", comparison.New);
            Strings(json, "notes", comparison.Notes);
            json.WriteEndObject();
        }

        writer.WriteLine(Encoding.UTF8.GetString(bytes.ToArray()));
    }

    private static void Reading(Utf8JsonWriter json, ReadingChange row)
    {
        json.WriteStartObject();
        json.WriteString("step", row.Step);
        json.WriteString("quantity", row.Quantity);
        json.WriteString("unit", row.Unit);
        Side(json, "before", row.Before);
        Side(json, "after", row.After);
        Number(json, "change", row.Change);
        Number(json, "uncertainty", row.Uncertainty);
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
        Number(json, "value", row.Value);
        Number(json, "uncertainty", row.Uncertainty);
        json.WriteString("verdict", row.Verdict is { } verdict ? JudgementJson.Code(verdict) : null);
        json.WriteEndObject();
    }

    private static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            json.WriteNumber(name, Math.Round(number, 6));
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static void Strings(Utf8JsonWriter json, string name, IReadOnlyList<string> texts)
    {
        json.WriteStartArray(name);
        foreach (string text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }
}
