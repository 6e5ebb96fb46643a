using System;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Measuring;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// How far off a reading is, as belief in each of the five levels. Inside a limit the belief in "low" grows gently towards it, outside it is
/// soon certain: a leaning inside may order suspects, it never raises one.
/// </summary>
public static class Grading
{
    /// <summary>Readings may lean inside a band by about this part of it.</summary>
    private const double InnerSoftness = 0.12;

    private const double OuterSoftness = 0.03;

    /// <param name="veryLow">Below this it is very low.</param>
    /// <param name="veryHigh">Above this it is very high.</param>
    public static double[] Against(Measured reading, Limit limit, double veryLow, double veryHigh)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(limit);
        double width = limit is { Min: { } low, Max: { } high } ? high - low : 0.4 * Math.Abs(limit.Min ?? limit.Max ?? 1);
        double below = limit.Min is { } min ? Beyond(min - reading.Value, width, reading.Expanded) : 0;
        double above = limit.Max is { } max ? Beyond(reading.Value - max, width, reading.Expanded) : 0;
        return Split(reading.Value, width, below, above, veryLow, veryHigh, reading.Expanded);
    }

    /// <summary>A relative difference (or any signed size) whose healthy value is 0.</summary>
    /// <param name="practical">Below this size a difference means nothing in practice.</param>
    /// <param name="gross">From here on it is very low or very high.</param>
    public static double[] Difference(Measured difference, double practical, double gross)
    {
        ArgumentNullException.ThrowIfNull(difference);
        double scale = Math.Max(practical / 4, difference.Expanded / 2);
        double below = Sigmoid((-difference.Value - practical) / scale);
        double above = Sigmoid((difference.Value - practical) / scale);
        return Split(difference.Value, practical, below, above, -gross, gross, difference.Expanded);
    }

    public static double Sigmoid(double x) => 1 / (1 + Math.Exp(-x));

    private static double Beyond(double excess, double width, double expanded)
    {
        double softness = excess < 0 ? InnerSoftness : OuterSoftness;
        return Sigmoid(excess / Math.Max(Math.Max(softness * width, expanded / 2), 1e-9));
    }

    private static double[] Split(double value, double width, double below, double above, double veryLow, double veryHigh, double expanded)
    {
        double soft = Math.Max(Math.Max(0.12 * width, expanded / 2), 1e-9);
        double farBelow = below * Sigmoid((veryLow - value) / soft);
        double farAbove = above * Sigmoid((value - veryHigh) / soft);
        double total = below + above;
        double squeeze = total > 1 ? 1 / total : 1;
        return
        [
            farBelow * squeeze,
            (below - farBelow) * squeeze,
            Math.Max(0, 1 - (total * squeeze)),
            (above - farAbove) * squeeze,
            farAbove * squeeze,
        ];
    }
}
