using System;
using System.Collections.Generic;
using System.Linq;
using MathNet.Numerics.Distributions;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>
/// Uncertainty components of one value, combined after the GUM (JCGM 100:2008): root of the sum of squares (5.1.2), effective degrees
/// of freedom by Welch-Satterthwaite (G.4.1), expanded with Student's t for 95.45 % (G.3.2).
/// </summary>
public sealed class UncertaintyBudget
{
    /// <summary>Level of confidence of a coverage factor 2 with infinitely many degrees of freedom.</summary>
    public const double Confidence = 0.9544997361036416;

    // Found by search, and asked for by every hold of a day: kept by the whole number of degrees of freedom. 0 where it was not asked for yet.
    private static readonly double[] FactorsKept = new double[4096];

    private readonly List<(double Standard, double DegreesOfFreedom)> components = [];

    public UncertaintyBudget()
    {
    }

    private UncertaintyBudget(IEnumerable<(double, double)> components) => this.components.AddRange(components);

    public double Standard => Math.Sqrt(components.Sum(c => c.Standard * c.Standard));

    /// <summary>Infinite where no component has few.</summary>
    public double DegreesOfFreedom
    {
        get
        {
            double denominator = components.Sum(c => double.IsInfinity(c.DegreesOfFreedom) ? 0 : Math.Pow(c.Standard, 4) / c.DegreesOfFreedom);
            return denominator > 0 ? Math.Pow(Standard, 4) / denominator : double.PositiveInfinity;
        }
    }

    public double Expanded => Standard * FactorKept(DegreesOfFreedom);

    /// <summary>Student's t for the interval that holds 95.45 %; degrees of freedom are cut to a whole number, as GUM G.4.1 advises.</summary>
    public static double CoverageFactor(double degreesOfFreedom, double confidence = Confidence)
    {
        double quantile = 0.5 + (confidence / 2);
        return degreesOfFreedom > 1e6
            ? Normal.InvCDF(0, 1, quantile)
            : StudentT.InvCDF(0, 1, Math.Max(1, Math.Floor(degreesOfFreedom)), quantile);
    }

    private static double FactorKept(double degreesOfFreedom)
    {
        if (!(degreesOfFreedom < FactorsKept.Length))
        {
            return CoverageFactor(degreesOfFreedom);
        }

        ref double kept = ref FactorsKept[(int)Math.Max(1, degreesOfFreedom)];
        kept = kept > 0 ? kept : CoverageFactor(degreesOfFreedom);
        return kept;
    }

    /// <summary>Type A: a standard error with its degrees of freedom (0 where they are not known: taken as many).</summary>
    public UncertaintyBudget Add(double standard, double degreesOfFreedom = double.PositiveInfinity)
    {
        if (standard > 0)
        {
            components.Add((standard, degreesOfFreedom > 0 ? degreesOfFreedom : double.PositiveInfinity));
        }

        return this;
    }

    /// <summary>Type B: anywhere within plus or minus the half-width (GUM 4.3.7).</summary>
    public UncertaintyBudget AddRectangular(double halfWidth) => Add(Math.Abs(halfWidth) / Math.Sqrt(3));

    /// <summary>Type B: the last digit that the instrument resolves (GUM F.2.2.1).</summary>
    public UncertaintyBudget AddResolution(double digit) => AddRectangular(digit / 2);

    /// <summary>Of a value that has both sets of components, a sum or a difference of two readings.</summary>
    public UncertaintyBudget With(UncertaintyBudget other) => new(components.Concat(other.components));

    /// <summary>Of a value that is multiplied by a constant.</summary>
    public UncertaintyBudget Scaled(double factor) => new(components.Select(c => (c.Standard * Math.Abs(factor), c.DegreesOfFreedom)));
}
