using System;
using System.Collections.Generic;
using System.Linq;
using MathNet.Numerics.Distributions;

namespace LoggerBox.Host.Judging.FromJobs;

/// <summary>
/// Two-sided tolerance interval of a normal distribution, mean and deviation unknown: with 95 % confidence it holds 95 % of all healthy trucks.
/// Factor after Howe (1969) as in NIST/SEMATECH e-Handbook 7.2.6.3; ISO 16269-6 tables the exact one. Few readings make it wide: 3 readings 9.9 deviations.
/// </summary>
public static class ToleranceInterval
{
    public const double Proportion = 0.95;
    public const double Confidence = 0.95;

    /// <param name="values">One reading a job.</param>
    /// <param name="uncertainties">Expanded (95.45 %), in the same order: spread below the readings' own uncertainty is chance.</param>
    public static (double Low, double High) Of(IReadOnlyList<double> values, IReadOnlyList<double> uncertainties)
    {
        double mean = values.Average();
        double between = values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1);
        double within = uncertainties.Average(expanded => expanded * expanded / 4);
        double half = Factor(values.Count, Proportion, Confidence) * Math.Sqrt(Math.Max(between, within));
        return (mean - half, mean + half);
    }

    public static double Factor(int count, double proportion, double confidence)
    {
        int freedom = count - 1;
        double z = Normal.InvCDF(0, 1, (1 + proportion) / 2);
        return z * Math.Sqrt(freedom * (1 + (1.0 / count)) / ChiSquared.InvCDF(freedom, 1 - confidence));
    }
}
