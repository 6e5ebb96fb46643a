using System;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Checking;

/// <summary>One reading against one limit, in whole millionths of the limit's unit, so that "exactly on the limit" means what it says.</summary>
public static class LimitCheck
{
    private const double Millionths = 1e6;

    /// <param name="reading">In the limit's unit; null where there is none.</param>
    /// <param name="isVoid">A gate made the reading unfit to judge.</param>
    public static Check Of(string step, string quantity, Measured? reading, string unit, Limit limit, bool isVoid = false)
    {
        ArgumentNullException.ThrowIfNull(limit);
        var verdict = isVoid ? Verdict.Void : reading is null ? Verdict.NotMeasured : Judge(reading, limit);
        return new Check(step, quantity, reading?.Value, reading?.Expanded, unit, limit.Min, limit.Max, verdict);
    }

    public static Verdict Judge(Measured reading, Limit limit)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(limit);
        var band = new LimitBand
        {
            HasMin = limit.Min is not null,
            Min = Whole(limit.Min ?? 0),
            HasMax = limit.Max is not null,
            Max = Whole(limit.Max ?? 0),
        };
        return band.Judge(Whole(reading.Value), Whole(reading.Expanded)) switch
        {
            LimitOutcome.Low => Verdict.Low,
            LimitOutcome.High => Verdict.High,
            LimitOutcome.CloseLow => Verdict.CloseLow,
            LimitOutcome.CloseHigh => Verdict.CloseHigh,
            _ => Verdict.In,
        };
    }

    private static long Whole(double value) => (long)Math.Round(value * Millionths);
}
