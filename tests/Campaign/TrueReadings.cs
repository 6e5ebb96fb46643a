using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Runs;

namespace LoggerBox.Campaign;

/// <summary>What was really so while a hold was measured: plain means over the hold's own time.</summary>
internal sealed class TrueReadings
{
    private readonly List<TruthRow> _rows = [];

    public void Add(TruthRow row) => _rows.Add(row);

    /// <summary>Null for what is no reading of a hold, or a difference of two.</summary>
    public double? Of(Check check, int which, Judgement seen, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(check);
        return check.Quantity switch
        {
            "rpm" => Mean(seen, check.Step, which, row => row.Rpm),
            "main" => Mean(seen, check.Step, which, row => row.MainPascal / unit.InPascal()),
            "clutch" => Mean(seen, check.Step, which, row => row.ClutchPascal / unit.InPascal()),
            "converter" => Mean(seen, check.Step, which, row => row.ConverterPascal / unit.InPascal()),
            "rpm-drop" => Mean(seen, "governed", 0, row => row.Rpm) - Mean(seen, "relief", 0, row => row.Rpm),
            _ => null,
        };
    }

    private double? Mean(Judgement seen, string step, int which, Func<TruthRow, double> reading)
    {
        JudgedHold? hold = seen.Holds.Where(h => h.Counts && StepCodes.Text(h.Step) == step).ElementAtOrDefault(which);
        if (hold is null)
        {
            return null;
        }

        var during = _rows.Where(row => row.Microseconds / 1e6 >= hold.StartSeconds && row.Microseconds / 1e6 <= hold.StartSeconds + hold.DurationSeconds).ToList();
        return during.Count == 0 ? null : during.Average(reading);
    }
}
