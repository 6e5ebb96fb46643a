using System;
using System.Collections.Generic;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.FromJobs;

/// <summary>Every reading of a job that a data sheet can limit, under the name that the sheet has for it. Pressures in kPa.</summary>
public static class SheetReadings
{
    private static readonly (string Condition, Step Neutral, Step Forward, Step Reverse)[] Conditions =
    [
        ("idle", Step.IdleNeutral, Step.IdleForward, Step.IdleReverse),
        ("hold", Step.HoldNeutral, Step.HoldForward, Step.HoldReverse),
        ("stall", Step.None, Step.StallForward, Step.StallReverse),
    ];

    public static IReadOnlyDictionary<string, SheetReading> Of(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var readings = new Dictionary<string, SheetReading>();
        StepReadings steps = evidence.Steps;
        Add(readings, "engine.idle_rpm", steps.Good(Step.IdleNeutral)?.Rpm);
        Add(readings, "engine.governed_rpm", evidence.Governed);
        Add(readings, "engine.relief_drop_rpm", evidence.ReliefDrop);
        Add(readings, "engine.stall_forward_rpm", steps.Good(Step.StallForward)?.Rpm);
        Add(readings, "engine.stall_reverse_rpm", steps.Good(Step.StallReverse)?.Rpm);
        Add(readings, "engine.run_up_s", evidence.RunUp);
        foreach ((string condition, Step neutral, Step forward, Step reverse) in Conditions)
        {
            AddPressures(readings, $"pressure.{condition}.neutral", neutral == Step.None ? null : steps.Good(neutral), withClutch: false);
            AddPressures(readings, $"pressure.{condition}.forward", steps.Good(forward), withClutch: true);
            AddPressures(readings, $"pressure.{condition}.reverse", steps.Good(reverse), withClutch: true);
        }

        Measured? difference = evidence.Newest(one =>
            one.Steps.Good(Step.HoldForward)?.Clutch is { } forward && one.Steps.Good(Step.HoldReverse)?.Clutch is { } reverse ? forward.Less(reverse) : null);
        Add(readings, "difference.clutch_forward_reverse", Kilopascal(difference is { Value: < 0 } ? difference.Scaled(-1) : difference));
        Add(readings, "engagement.forward", EngagementReadings.Seconds(evidence.Sessions, Gear.Forward));
        Add(readings, "engagement.reverse", EngagementReadings.Seconds(evidence.Sessions, Gear.Reverse));
        return readings;
    }

    private static void AddPressures(Dictionary<string, SheetReading> readings, string section, MeasuredHold? hold, bool withClutch)
    {
        Add(readings, section + ".main", Kilopascal(hold?.Main));
        Add(readings, section + ".converter", Kilopascal(hold?.Converter));
        if (withClutch)
        {
            Add(readings, section + ".clutch", Kilopascal(hold?.Clutch));
        }
    }

    private static Measured? Kilopascal(Measured? pascal) => pascal?.Scaled(0.001);

    private static void Add(Dictionary<string, SheetReading> readings, string place, Measured? measured)
    {
        if (measured is not null)
        {
            readings.Add(place, new SheetReading(measured.Value, measured.Expanded));
        }
    }
}
