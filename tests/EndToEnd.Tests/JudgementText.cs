using System.Collections.Generic;
using System.Linq;
using System.Text.Json;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>A judgement as another program reads it from `--json`.</summary>
internal sealed class JudgementText
{
    public static readonly string[] ContractSteps =
        ["zero", "idle-N", "idle-F", "idle-R", "governed", "relief", "stall-F", "stall-R", "hold-N", "hold-F", "hold-R"];

    public JudgementText(string json) => Root = JsonDocument.Parse(json).RootElement;

    public JsonElement Root { get; }

    /// <summary>The suspects of rank 1.</summary>
    public HashSet<string> First => [.. Root.GetProperty("suspects").EnumerateArray().Where(one => one.GetProperty("rank").GetInt32() == 1).Select(CodeOf)];

    /// <summary>The code that stands first in the list; empty when nobody is suspected.</summary>
    public string Leading => Root.GetProperty("suspects").EnumerateArray().Select(CodeOf).FirstOrDefault("");

    public HashSet<string> Validity => [.. Root.GetProperty("validity").EnumerateArray().Select(CodeOf)];

    public HashSet<string> StepsThatCount =>
        [.. Root.GetProperty("holds").EnumerateArray().Where(hold => hold.GetProperty("counts").GetBoolean()).Select(hold => hold.GetProperty("step").GetString()!)];

    public JsonElement Hold(string step) =>
        Root.GetProperty("holds").EnumerateArray().Last(hold => hold.GetProperty("counts").GetBoolean() && hold.GetProperty("step").GetString() == step);

    public string[] Verdicts(string quantity) =>
        [.. Root.GetProperty("checks").EnumerateArray().Where(check => check.GetProperty("quantity").GetString() == quantity).Select(check => check.GetProperty("verdict").GetString()!)];

    private static string CodeOf(JsonElement one) => one.GetProperty("code").GetString()!;
}
