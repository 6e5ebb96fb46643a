using System;
using System.Collections.Generic;
using System.IO;
using System.Text.Json;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging;

/// <summary>A judgement as one JSON object, format "loggerbox-judgement/1": a missing value is null, never 0.</summary>
public static class JudgementJson
{
    public const string Format = "loggerbox-judgement/1";

    public static void Write(Judgement judgement, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(judgement);
        JsonText.Write(writer, json => Content(json, judgement));
    }

    public static void Write(Judgement judgement, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(judgement);
        JsonText.Write(stream, json => Content(json, judgement));
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

    private static void Content(Utf8JsonWriter json, Judgement judgement)
    {
        json.WriteStartObject();
        json.WriteString("format", Format);
        json.WriteString("rules", judgement.Rules);
        json.WriteString("unit", judgement.Unit.Code());
        json.WriteString("truck", judgement.Truck);
        json.WriteStartObject("sheet");
        json.WriteString("name", judgement.SheetName);
        json.WriteString("source", judgement.SheetSource);
        json.WriteString("version", judgement.SheetVersion);
        json.WriteEndObject();
        Array(json, "validity", judgement.Validity, Validity);
        Array(json, "holds", judgement.Holds, Hold);
        Array(json, "engagements", judgement.Engagements, Engagement);
        Array(json, "checks", judgement.Checks, Check);
        if (judgement.StallHeats.Count > 0)
        {
            Array(json, "stall_heat", judgement.StallHeats, StallHeat);
        }

        Array(json, "suspects", judgement.Suspects, Suspect);
        Array(json, "not_covered", judgement.NotCovered, NotCovered);
        json.WriteEndObject();
    }

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
        json.WriteString("gear", Words.GearCode(hold.Gear));
        json.WriteReading("start_s", hold.StartSeconds);
        json.WriteReading("duration_s", hold.DurationSeconds);
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
        json.WriteReading("settled", reading.Settled);
        json.WriteReading("peak", reading.Peak);
        json.WriteReading("uncertainty", reading.Uncertainty);
        json.WriteEndObject();
    }

    private static void Engagement(Utf8JsonWriter json, JudgedEngagement engagement)
    {
        json.WriteString("gear", Words.GearCode(engagement.Gear));
        json.WriteReading("start_s", engagement.StartSeconds);
        json.WriteReading("fill_s", engagement.FillSeconds);
        json.WriteReading("rise_s", engagement.RiseSeconds);
        json.WriteReading("total_s", engagement.TotalSeconds);
        json.WriteReading("overshoot_percent", engagement.OvershootPercent);
    }

    private static void StallHeat(Utf8JsonWriter json, StallHeat heat)
    {
        json.WriteString("gear", Words.GearCode(heat.Gear));
        json.WriteReading("start_s", heat.StartSeconds);
        json.WriteReading("duration_s", heat.DurationSeconds);
        json.WriteReading("power_kw", heat.PowerWatts / 1000);
        json.WriteReading("power_uncertainty_kw", heat.PowerUncertainty / 1000);
        json.WriteReading("rise_k", heat.RiseKelvin);
        json.WriteReading("rise_uncertainty_k", heat.RiseUncertainty);
        json.WriteReading("wait_s", heat.WaitSeconds);
    }

    private static void Check(Utf8JsonWriter json, Check check)
    {
        json.WriteString("step", check.Step);
        json.WriteString("quantity", check.Quantity);
        json.WriteReading("value", check.Value);
        json.WriteReading("uncertainty", check.Uncertainty);
        json.WriteString("unit", check.Unit);
        json.WriteReading("min", check.Min);
        json.WriteReading("max", check.Max);
        json.WriteString("verdict", Code(check.Verdict));
    }

    private static void Suspect(Utf8JsonWriter json, Suspect suspect)
    {
        json.WriteString("code", suspect.Code);
        json.WriteNumber("rank", suspect.Rank);
        json.WriteReading("score", suspect.Score);
        json.WriteStrings("for", suspect.For);
        json.WriteStrings("against", suspect.Against);
        json.WriteString("next", suspect.Next);
    }

    private static void NotCovered(Utf8JsonWriter json, NotCovered item)
    {
        json.WriteString("code", item.Code);
        json.WriteString("text", item.Text);
        json.WriteString("next", item.Next);
    }

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
}
