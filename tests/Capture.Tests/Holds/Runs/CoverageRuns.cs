using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;

namespace LoggerBox.Capture.Tests.Holds.Runs;

/// <summary>How often the printed interval (95.45 %, Student's t) of a hold with correlated noise holds the true level.</summary>
internal sealed class CoverageRuns
{
    public CoverageRuns(int channel, double sigma, double correlation, double seconds, double perSecond, int runs, int seed)
    {
        int covered = 0;
        List<double> widths = [];
        for (int run = 0; run < runs; run++)
        {
            double[] values = Signals.Standing(channel, sigma, seconds, perSecond, new Noise(seed + run, correlation));
            FoundHold? hold = FoundHolds.In(channel, values, perSecond).MaxBy(one => one.Length);
            if (hold is null)
            {
                Lost++;
                continue;
            }

            double expanded = new UncertaintyBudget().Add(hold.StandardError, hold.DegreesOfFreedom).Expanded;
            widths.Add(expanded / sigma);
            covered += Math.Abs(hold.Settled - Signals.Level(channel)) <= expanded ? 1 : 0;
            Seconds += hold.Length / runs;
        }

        Covered = 100.0 * covered / Math.Max(1, runs - Lost);
        Expanded = widths.Count == 0 ? double.NaN : widths.Average();
    }

    public int Lost { get; }

    /// <summary>Percent of the found holds.</summary>
    public double Covered { get; }

    /// <summary>Mean half-width in sigma, and mean length of the settled part in seconds.</summary>
    public double Expanded { get; }

    public double Seconds { get; }
}
