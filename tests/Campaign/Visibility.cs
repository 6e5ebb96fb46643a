using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Faults;

namespace LoggerBox.Campaign;

/// <summary>Whether a perfect instrument would have shown anything.</summary>
/// <param name="OutOfLimits">A reading lies outside its limit by more than its uncertainty.</param>
/// <param name="Difference">Largest move of a difference of two readings against the same truck in order, beyond its uncertainty, as a part of the reading.</param>
/// <param name="Measuring">The measuring itself is wrong beyond what the contract allows.</param>
internal sealed record Visibility(bool OutOfLimits, double Difference, string DifferenceName, bool Measuring)
{
    /// <summary>
    /// Two holds of a sound truck agree within this part (a published sheet allows 5 psi between clutches of some 120 psi); at idle, where
    /// speeds differ with the gear, within twice as much.
    /// </summary>
    public const double SoundPairsAgreeWithin = 0.05;

    private const double ZeroBeyondPartOfRange = 0.01;

    public bool IsVisible => OutOfLimits || Measuring || Difference > SoundPairsAgreeWithin;

    /// <param name="sound">The same truck in order; asked for only where no limit tells.</param>
    public static Visibility Of(FittedTruck fitted, Measurement measured, Func<Judgement> sound)
    {
        bool outside = measured.True.Checks.Any(check => IsBeyond(check, measured.Seen));
        bool wrong = MeasuringIsWrong(fitted);
        var (size, name) = outside || wrong ? (0, "") : LargestMove(measured.True, sound());
        return new Visibility(outside, size, name, wrong);
    }

    // By more than the uncertainty of the reading that the technician has; what was not measured shows nothing.
    private static bool IsBeyond(Check truth, Judgement judgement)
    {
        double? uncertainty = judgement.Checks.Where(check => check.Step == truth.Step && check.Quantity == truth.Quantity).Max(check => check.Uncertainty);
        return truth.Verdict is Verdict.Low or Verdict.High && uncertainty is { } u
            && (truth.Value < truth.Min - u || truth.Value > truth.Max + u);
    }

    private static bool MeasuringIsWrong(FittedTruck fitted)
    {
        double range = fitted.Instruments.ShiftedChannel == 3 ? 300 : 500;
        double shiftPsi = Math.Abs(fitted.Instruments.ShiftPascal) / TruckSimulator.Truck.Units.PascalPerPsi;
        return shiftPsi > ZeroBeyondPartOfRange * range * 1.1 || fitted.Instruments.ExchangedLine > 0;
    }

    private static (double Size, string Name) LargestMove(Judgement faulty, Judgement sound)
    {
        var then = Differences(sound).ToDictionary(pair => pair.Name, pair => pair.Value);
        var moved = Differences(faulty)
            .Where(pair => then.ContainsKey(pair.Name))
            .Select(pair => (Size: Math.Abs(pair.Value - then[pair.Name]) - pair.Uncertainty, pair.Name))
            .ToList();
        return moved.Count == 0 ? (0, "") : moved.MaxBy(pair => pair.Size);
    }

    private static IEnumerable<(string Name, double Value, double Uncertainty)> Differences(Judgement of)
    {
        (Step, Step, Func<JudgedHold, Reading?>, string)[] pairs =
        [
            (Step.IdleForward, Step.IdleReverse, h => h.Clutch, "clutch idle F:R"),
            (Step.HoldForward, Step.HoldReverse, h => h.Clutch, "clutch hold F:R"),
            (Step.IdleForward, Step.IdleNeutral, h => h.Main, "main idle F:N"),
            (Step.IdleReverse, Step.IdleNeutral, h => h.Main, "main idle R:N"),
            (Step.HoldForward, Step.HoldNeutral, h => h.Main, "main hold F:N"),
            (Step.HoldReverse, Step.HoldNeutral, h => h.Main, "main hold R:N"),
            (Step.HoldForward, Step.HoldNeutral, h => h.Converter, "converter hold F:N"),
            (Step.HoldReverse, Step.HoldNeutral, h => h.Converter, "converter hold R:N"),
            (Step.StallForward, Step.StallReverse, h => h.Rpm, "stall F:R"),
        ];
        foreach (var (first, second, channel, name) in pairs)
        {
            if (Reading(of, first, channel) is { } one && Reading(of, second, channel) is { Settled: > 1 } other)
            {
                double uncertainty = Math.Sqrt((one.Uncertainty * one.Uncertainty) + (other.Uncertainty * other.Uncertainty)) / other.Settled;
                yield return (name, (one.Settled - other.Settled) / other.Settled, uncertainty + (first is Step.IdleForward or Step.IdleReverse ? SoundPairsAgreeWithin : 0));
            }
        }
    }

    private static Reading? Reading(Judgement of, Step step, Func<JudgedHold, Reading?> channel) =>
        of.Holds.LastOrDefault(hold => hold.Counts && hold.Step == step) is { } hold ? channel(hold) : null;
}
