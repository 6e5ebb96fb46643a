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

    /// <summary>Speeds of a sound truck scatter by about this part around what its sheet names. Common practice, no source.</summary>
    private const double OneRatio = 0.02;

    /// <summary>Two ring gears of usual tooth counts (126 and 135) come to a fraction of small numbers.</summary>
    private const int LargestOfFraction = 20;
    private const double LikeTheFraction = 0.006;

    /// <summary>Beyond doubt: idle is off as well, and no fault in a truck moves all its speeds alike.</summary>
    public static CauseScore? Find(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        List<SpeedRatio> ratios = Ratios(evidence);
        if (ratios.Count < 2 || ratios[0] is not { Step: Step.IdleNeutral, IsOut: true } || !AllOutOneWay(ratios))
        {
            return null;
        }

        // The narrowest limit knows the ratio best; the others have to allow it.
        SpeedRatio best = ratios.MinBy(r => r.HalfWidth)!;
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

    /// <summary>
    /// Idle is within its wide limits and tells nothing, but governed speed and both stalls are off by one ratio of tooth counts: it cannot be
    /// told from an engine that is off by as much, so it shares the rank of the cause that explains the speeds best.
    /// </summary>
    public static CauseScore? Possible(Evidence evidence, CauseScore best)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(best);
        List<SpeedRatio> ratios = Ratios(evidence);
        List<SpeedRatio> faster = [.. ratios.Where(r => r.Step != Step.IdleNeutral)];
        if (faster.Count < 3 || !AllOutOneWay(faster))
        {
            return null;
        }

        double ratio = faster.Average(r => r.Ratio);
        var (over, under) = Fraction(ratio);
        bool agree = faster.TrueForAll(r => Math.Abs((r.Ratio / ratio) - 1) < OneRatio);
        bool idleAllows = ratios.TrueForAll(r => r.Step != Step.IdleNeutral || Math.Abs((r.Ratio / ratio) - 1) <= r.HalfWidth);
        return agree && idleAllows && under > 0
            ? new CauseScore(Cause.PickupScale, best.Fit, -1, [.. faster.Select(r => r.Text), Sentences.PickupScalePossible(ratio, over, under)], []) { Commonness = best.Commonness }
            : null;
    }

    /// <summary>The fraction of small numbers that is nearest; 0 where none is near.</summary>
    private static (int Over, int Under) Fraction(double ratio)
    {
        var (over, under) = Enumerable.Range(2, LargestOfFraction - 1)
            .Select(under => (Over: (int)Math.Round(ratio * under), Under: under))
            .MinBy(fraction => Math.Abs(((double)fraction.Over / fraction.Under) - ratio));
        return Math.Abs(((double)over / under / ratio) - 1) < LikeTheFraction ? (over, under) : (0, 0);
    }

    private static bool AllOutOneWay(List<SpeedRatio> ratios) =>
        ratios.TrueForAll(r => r.IsOut) && ratios.Select(r => Math.Sign(r.Ratio - 1)).Distinct().Count() == 1;

    /// <summary>Idle first where it was read.</summary>
    private static List<SpeedRatio> Ratios(Evidence evidence)
    {
        var engine = evidence.Engine;
        SpeedRatio?[] all =
        [
            Of(Step.IdleNeutral, "Idle", evidence.Steps.Good(Step.IdleNeutral)?.Rpm, engine.IdleRpm),
            Of(Step.Governed, "Governed speed", evidence.Governed, engine.GovernedRpm),
            Of(Step.StallForward, "Stall in F", evidence.Steps.Good(Step.StallForward)?.Rpm, engine.StallForwardRpm),
            Of(Step.StallReverse, "Stall in R", evidence.Steps.Good(Step.StallReverse)?.Rpm, engine.StallReverseRpm),
        ];
        return [.. all.OfType<SpeedRatio>()];
    }

    private static SpeedRatio? Of(Step step, string name, Measured? reading, Limit? limit)
    {
        double? nominal = limit?.Nominal ?? ((limit?.Min + limit?.Max) / 2);
        if (reading is null || limit is null || nominal is not > 0)
        {
            return null;
        }

        bool isOut = LimitCheck.Judge(reading, limit) is Verdict.Low or Verdict.High;
        double half = ((limit.Max ?? (1.06 * nominal)) - (limit.Min ?? (0.94 * nominal))).Value / 2 / nominal.Value;
        double ratio = reading.Value / nominal.Value;
        return new SpeedRatio(step, ratio, half, isOut, Sentences.PickupRatio(name, reading.Value, ratio));
    }

    private sealed record SpeedRatio(Step Step, double Ratio, double HalfWidth, bool IsOut, string Text);
}
