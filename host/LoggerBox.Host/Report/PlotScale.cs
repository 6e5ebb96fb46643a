using System;
using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.Host.Report;

/// <summary>Where a plot's axes end and how they are divided.</summary>
internal static class PlotScale
{
    private const int MarksUpward = 3;

    /// <summary>Distance of the marks, and the axis' end.</summary>
    public static (double Step, double Top) Upward(params TraceCurve[] curves) => Upward(curves, []);

    /// <param name="limits">Which must be on the picture, too.</param>
    public static (double Step, double Top) Upward(IEnumerable<TraceCurve> curves, IEnumerable<double> limits)
    {
        double highest = curves.Where(curve => !curve.IsEmpty).Select(Highest).Concat(limits).DefaultIfEmpty(1).Max();
        double step = Step(highest * 1.06, MarksUpward);
        return (step, Math.Max(step, Math.Ceiling(highest * 1.02 / step) * step));
    }

    /// <summary>1, 2 or 5 times a power of ten, for about the wanted number of marks.</summary>
    public static double Step(double span, int marks)
    {
        double rough = Math.Max(span, 1e-6) / marks;
        double power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        double digit = rough / power;
        return power * (digit <= 1 ? 1 : digit <= 2 ? 2 : digit <= 5 ? 5 : 10);
    }

    /// <summary>Ignition noise makes single wild samples; they are drawn up to the frame, and do not flatten the rest.</summary>
    private static double Highest(TraceCurve curve)
    {
        double[] highs = [.. curve.Points.Select(point => point.High).Order()];
        return Math.Max(1e-3, Math.Min(highs[^1], 1.25 * highs[(int)(0.98 * (highs.Length - 1))]));
    }
}
