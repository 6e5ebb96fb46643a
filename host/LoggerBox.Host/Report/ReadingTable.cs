using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report;

/// <summary>One line of the readings: what was measured, against what, and what follows; a null verdict is "recorded, not judged".</summary>
public sealed record ReadingRow(
    string Step,
    string Quantity,
    double? Value,
    double? Uncertainty,
    double? Peak,
    string Unit,
    double? Min,
    double? Max,
    Verdict? Verdict);

/// <summary>The judged checks and the readings that no limit was given for, step by step in the order of the test.</summary>
public static class ReadingTable
{
    private static readonly string[] Order =
    [
        "zero", "idle-N", "idle-F", "idle-R", "idle", "governed", "relief", "stall-F", "stall-R", "stall",
        "hold-N", "hold-F", "hold-R", "hold", "engage-F", "engage-R", "engage",
    ];

    public static IReadOnlyList<ReadingRow> Of(Judgement judgement)
    {
        var rows = new List<ReadingRow>();
        foreach (Check check in judgement.Checks)
        {
            rows.Add(new ReadingRow(StepOf(check), check.Quantity, check.Value, check.Uncertainty, PeakOf(judgement, check), check.Unit, check.Min, check.Max, check.Verdict));
        }

        foreach (JudgedHold hold in judgement.Holds.Where(hold => hold.Counts))
        {
            AddUnjudged(rows, hold, judgement.Unit.Code());
        }

        return [.. InOrder(rows)];
    }

    /// <summary>In the order of the test, and within a step as its gauges are read.</summary>
    public static IEnumerable<ReadingRow> InOrder(IEnumerable<ReadingRow> rows) => rows.OrderBy(row => PlaceOf(row.Step)).ThenBy(row => PlaceOfQuantity(row.Quantity));

    public static Reading? ReadingOf(JudgedHold hold, string quantity) => quantity switch
    {
        "rpm" => hold.Rpm,
        "main" => hold.Main,
        "clutch" => hold.Clutch,
        "converter" => hold.Converter,
        _ => null,
    };

    private static void AddUnjudged(List<ReadingRow> rows, JudgedHold hold, string pressureUnit)
    {
        string step = StepCodes.Text(hold.Step);
        foreach (string quantity in (string[])["rpm", "main", "clutch", "converter"])
        {
            Reading? reading = ReadingOf(hold, quantity);
            if (reading is null || hold.Step is Step.None || (hold.Step is Step.Zero && quantity == "rpm") || rows.Exists(row => row.Step == step && row.Quantity == quantity))
            {
                continue;
            }

            string unit = quantity == "rpm" ? "rpm" : pressureUnit;
            rows.Add(new ReadingRow(step, quantity, reading.Settled, reading.Uncertainty, reading.Peak, unit, null, null, null));
        }
    }

    /// <summary>The drop is seen while the work relief is held: there it is looked for, whatever it is counted from.</summary>
    private static string StepOf(Check check) => check.Quantity == "rpm-drop" ? StepCodes.Text(Step.Relief) : check.Step;

    private static double? PeakOf(Judgement judgement, Check check)
    {
        JudgedHold? hold = judgement.Holds.LastOrDefault(hold => hold.Counts && StepCodes.Text(hold.Step) == check.Step);
        return hold is null ? null : ReadingOf(hold, check.Quantity)?.Peak;
    }

    private static int PlaceOf(string step)
    {
        int place = Array.IndexOf(Order, step);
        return place < 0 ? Order.Length : place;
    }

    private static int PlaceOfQuantity(string quantity) => quantity switch
    {
        "rpm" => 0,
        "rpm-drop" => 1,
        "run-up-time" => 2,
        "main" => 3,
        "clutch" => 4,
        "converter" => 5,
        _ => 6,
    };
}
