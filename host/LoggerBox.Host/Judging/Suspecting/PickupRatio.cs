using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Checking;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>Every speed off by one and the same ratio: the pulses per revolution are set wrongly, the engine is not.</summary>
public static class PickupRatio
{
    private static readonly (double Ratio, string Name)[] Likely =
    [
        (0.25, "1/4"), (1.0 / 3, "1/3"), (0.5, "1/2"), (2.0 / 3, "2/3"), (0.75, "3/4"), (4.0 / 3, "4/3"), (1.5, "3/2"), (2, "2"), (3, "3"), (4, "4"),
    ];

    public static CauseScore? Find(Evidence evidence)
    {
        var engine = evidence.Engine;
        var ratios = new List<(double Ratio, double HalfWidth, bool Out, string Text)>();
        Add(ratios, "idle", evidence.Steps.Good(Step.IdleNeutral)?.Rpm, engine.IdleRpm);
        Add(ratios, "governed speed", evidence.Governed, engine.GovernedRpm);
        Add(ratios, "stall in F", evidence.Steps.Good(Step.StallForward)?.Rpm, engine.StallForwardRpm);
        Add(ratios, "stall in R", evidence.Steps.Good(Step.StallReverse)?.Rpm, engine.StallReverseRpm);
        bool idleToo = ratios.Count > 0 && ratios[0].Text.StartsWith("idle", StringComparison.Ordinal) && ratios[0].Out;
        if (ratios.Count < 2 || !idleToo || !ratios.All(r => r.Out) || ratios.Select(r => Math.Sign(r.Ratio - 1)).Distinct().Count() > 1)
        {
            return null;
        }

        // The narrowest limit knows the ratio best; the others have to allow it.
        var best = ratios.MinBy(r => r.HalfWidth);
        if (ratios.Any(r => Math.Abs((r.Ratio / best.Ratio) - 1) > r.HalfWidth + best.HalfWidth))
        {
            return null;
        }

        var (likely, name) = Likely.MinBy(l => Math.Abs(Math.Log(l.Ratio / best.Ratio)));
        string told = Math.Abs((best.Ratio / likely) - 1) < 0.06 ? name : best.Ratio.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture);
        return new CauseScore(
            Cause.PickupScale,
            9,
            -1,
            [.. ratios.Select(r => r.Text), Sentences.PickupScale(told)],
            []);
    }

    private static void Add(List<(double, double, bool, string)> ratios, string name, Measured? reading, Limit? limit)
    {
        double? nominal = limit?.Nominal ?? ((limit?.Min + limit?.Max) / 2);
        if (reading is null || limit is null || nominal is not > 0)
        {
            return;
        }

        bool isOut = LimitCheck.Judge(reading, limit) is Verdict.Low or Verdict.High;
        double half = ((limit.Max ?? (1.06 * nominal)) - (limit.Min ?? (0.94 * nominal))).Value / 2 / nominal.Value;
        double ratio = reading.Value / nominal.Value;
        ratios.Add((ratio, half, isOut, Sentences.PickupRatio(name, reading.Value, ratio)));
    }
}
