using System;
using System.Collections.Generic;
using System.IO;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging;

/// <summary>A judgement as one JSON object, format "loggerbox-judgement/1": a missing value is null, never 0.</summary>
public static class JudgementJson
{
    public const string Format = "loggerbox-judgement/1";

    // Sentences hold quotes and degree signs; the output is a file or a pipe, never a web page's script.
    private static readonly JsonWriterOptions Options = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static void Write(Judgement judgement, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        using var bytes = new MemoryStream();
        Write(judgement, bytes);
        writer.WriteLine(Encoding.UTF8.GetString(bytes.ToArray()));
    }

    public static void Write(Judgement judgement, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(judgement);
        using var json = new Utf8JsonWriter(stream, Options);
        json.WriteStartObject();
        json.WriteString("format", Format);
        json.WriteString("rules", judgement.Rules);
        json.WriteString("unit", judgement.Unit.Code());
        json.WriteString("truck", judgement.Truck);
        json.WriteStartObject("sheet");
        json.WriteString("name", judgement.SheetName);
        json.WriteString("source", judgement.SheetSource);
        json.WriteEndObject();
        Array(json, "validity", judgement.Validity, Validity);
        Array(json, "holds", judgement.Holds, Hold);
        Array(json, "engagements", judgement.Engagements, Engagement);
        Array(json, "checks", judgement.Checks, Check);
        Array(json, "suspects", judgement.Suspects, Suspect);
        Array(json, "not_covered", judgement.NotCovered, NotCovered);
        json.WriteEndObject();
    }

    /// <summary>The verdict's written code.</summary>
    public static string Code(Verdict verdict) => verdict switch
    {
        Verdict.In => "in",
        Verdict.Low => "low",
        Verdict.High => "high",
        Verdict.CloseLow => "close-low",
        Verdict.CloseHigh => "close-high",
        Verdict.NotMeasured => "not-measured",
        _ => "void",
    };

    private static void Validity(Utf8JsonWriter json, ValidityNote note)
    {
        json.WriteString("code", note.Code);
        json.WriteString("effect", note.Effect == ValidityEffect.Void ? "void" : "note");
        json.WriteString("step", StepCodes.Text(note.Step));
        json.WriteString("text", note.Text);
    }

    private static void Hold(Utf8JsonWriter json, JudgedHold hold)
    {
        json.WriteString("step", StepCodes.Text(hold.Step));
        json.WriteString("gear", GearCode(hold.Gear));
        Number(json, "start_s", hold.StartSeconds);
        Number(json, "duration_s", hold.DurationSeconds);
        json.WriteBoolean("counts", hold.Counts);
        Reading(json, "rpm", hold.Rpm);
        Reading(json, "main", hold.Main);
        Reading(json, "clutch", hold.Clutch);
        Reading(json, "converter", hold.Converter);
    }

    private static void Reading(Utf8JsonWriter json, string name, Reading? reading)
    {
        if (reading is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        Number(json, "settled", reading.Settled);
        Number(json, "peak", reading.Peak);
        Number(json, "uncertainty", reading.Uncertainty);
        json.WriteEndObject();
    }

    private static void Engagement(Utf8JsonWriter json, JudgedEngagement engagement)
    {
        json.WriteString("gear", GearCode(engagement.Gear));
        Number(json, "start_s", engagement.StartSeconds);
        Number(json, "fill_s", engagement.FillSeconds);
        Number(json, "rise_s", engagement.RiseSeconds);
        Number(json, "total_s", engagement.TotalSeconds);
        Number(json, "overshoot_percent", engagement.OvershootPercent);
    }

    private static void Check(Utf8JsonWriter json, Check check)
    {
        json.WriteString("step", check.Step);
        json.WriteString("quantity", check.Quantity);
        Number(json, "value", check.Value);
        Number(json, "uncertainty", check.Uncertainty);
        json.WriteString("unit", check.Unit);
        Number(json, "min", check.Min);
        Number(json, "max", check.Max);
        json.WriteString("verdict", Code(check.Verdict));
    }

    private static void Suspect(Utf8JsonWriter json, Suspect suspect)
    {
        json.WriteString("code", suspect.Code);
        json.WriteNumber("rank", suspect.Rank);
        Number(json, "score", suspect.Score);
        Strings(json, "for", suspect.For);
        Strings(json, "against", suspect.Against);
        json.WriteString("next", suspect.Next);
    }

    private static void NotCovered(Utf8JsonWriter json, NotCovered item)
    {
        json.WriteString("code", item.Code);
        json.WriteString("text", item.Text);
        json.WriteString("next", item.Next);
    }

    private static string? GearCode(Gear gear) => gear switch
    {
        Gear.Neutral => "N",
        Gear.Forward => "F",
        Gear.Reverse => "R",
        _ => null,
    };

    private static void Array<T>(Utf8JsonWriter json, string name, IReadOnlyList<T> items, Action<Utf8JsonWriter, T> members)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            members(json, item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
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

    /// <summary>Six decimals: a microsecond, a millionth of a unit.</summary>
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
}
