using System;
using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.Host.Calibrating;

/// <summary>What was read at one pressure of the reference.</summary>
/// <param name="Counts">Mean of the steady seconds.</param>
public sealed record CalibrationPoint(double Pascal, double Counts);

/// <summary>
/// Zero and span of one channel in the logger's integers: pascal = (counts - ZeroCounts) * SpanPascal / SpanCounts. Zero is the reading at no pressure,
/// span the straight line through it that fits the other points best; what it misses them by is the residual.
/// </summary>
/// <param name="Residuals">Pascal at each point, as the logger will compute it, less the reference.</param>
public sealed record ChannelFit(int ZeroCounts, int SpanCounts, int SpanPascal, IReadOnlyList<double> Residuals)
{
    /// <summary>From 4 to 20 mA: 16 mA of 800 counts each.</summary>
    public const int LoopCounts = 12_800;

    // The two span points: far enough from each other to carry a line, and near enough to where the channel is used.
    private const double LeastDistance = 0.3;
    private const double LeastHighest = 0.5;
    private const double MostHighest = 1.02;

    // A transducer of that range is never off by so much; one of another range, or a figure in another unit, is by far more.
    private const double MostFromNominal = 0.05;

    public double LargestResidual => Residuals.Max(Math.Abs);

    public double PascalAt(double counts) => (counts - ZeroCounts) * SpanPascal / SpanCounts;

    /// <summary>Refuses pressures that make no calibration, before anybody sets them.</summary>
    /// <param name="pascal">As they are set, zero first.</param>
    /// <param name="range">Pascal from 4 to 20 mA.</param>
    /// <returns>Why not; null: they are good.</returns>
    public static string? WhyNot(IReadOnlyList<double> pascal, double range)
    {
        ArgumentNullException.ThrowIfNull(pascal);
        return pascal.Count < 3 || pascal[0] != 0 ? "a calibration needs zero and two pressures at least"
            : pascal.Zip(pascal.Skip(1)).Any(pair => pair.Second <= pair.First) ? "pressures go up from zero, each approached from below"
            : pascal[^1] > MostHighest * range ? "the highest pressure is outside the transducer's range"
            : pascal[^1] < LeastHighest * range ? "the highest pressure is less than half of the transducer's range"
            : pascal[^1] - pascal[1] < LeastDistance * range ? "the span's pressures are nearer to each other than three tenths of the transducer's range"
            : null;
    }

    /// <param name="points">Zero first, then as the pressure went up.</param>
    /// <param name="range">Pascal from 4 to 20 mA.</param>
    /// <param name="why">Where it is none: why not.</param>
    public static ChannelFit? TryOf(IReadOnlyList<CalibrationPoint> points, double range, out string why)
    {
        why = WhyNot([.. points.Select(point => point.Pascal)], range) ?? WhyNotCounts(points, range) ?? "";
        if (why.Length > 0)
        {
            return null;
        }

        int zero = (int)Math.Round(points[0].Counts);
        double products = points.Sum(point => point.Pascal * (point.Counts - zero));
        double squares = points.Sum(point => (point.Counts - zero) * (point.Counts - zero));
        int span = (int)Math.Round(LoopCounts * products / squares);
        var fit = new ChannelFit(zero, LoopCounts, span, []);
        return fit with { Residuals = [.. points.Select(point => fit.PascalAt(point.Counts) - point.Pascal)] };
    }

    private static string? WhyNotCounts(IReadOnlyList<CalibrationPoint> points, double range)
    {
        if (points.Zip(points.Skip(1)).Any(pair => pair.Second.Counts <= pair.First.Counts))
        {
            return "the current did not rise with the pressure: another hose, another channel, or the loop is wired the wrong way round";
        }

        double slope = (points[^1].Pascal - points[0].Pascal) / (points[^1].Counts - points[0].Counts) * LoopCounts / range;
        return Math.Abs(slope - 1) > MostFromNominal
            ? $"the readings make a range of {slope * 100:0} % of the transducer's: check the reference's unit, and name the transducer's own range"
            : null;
    }
}
