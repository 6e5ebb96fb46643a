using System;
using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.Capture.Tests.Holds.Runs;

/// <summary>
/// Many runs of one exponential approach that then stands. Declared: where the record says that the settled part begins. Allowed for the
/// window itself: two bins of a tenth of a second, the one in which the tail falls under half a sigma and the next whole one.
/// </summary>
internal sealed class SettlingRuns
{
    private const double WindowSeconds = 0.2;

    public SettlingRuns(int channel, double sigma, double amplitude, double timeConstant, double standing, int runs, int seed)
    {
        double ideal = Signals.Ideal(amplitude, timeConstant);
        List<double> late = [];
        List<double> errors = [];
        for (int run = 0; run < runs; run++)
        {
            double[] values = Signals.Settling(channel, sigma, amplitude, timeConstant, standing, new Noise(seed + run));
            FoundHold? hold = FoundHolds.In(channel, values, Signals.PerSecond).LastOrDefault();
            if (hold is null || hold.End < ideal + standing - 1)
            {
                Lost++;
                continue;
            }

            late.Add(hold.Start / (ideal + WindowSeconds));
            errors.Add((hold.Settled - Signals.Level(channel)) / sigma);
        }

        late.Sort();
        MedianTime = late.Count == 0 ? double.NaN : late[late.Count / 2];
        LateTime = late.Count == 0 ? double.NaN : late[(late.Count - 1) * 95 / 100];
        Bias = errors.Count == 0 ? double.NaN : errors.Average();
    }

    /// <summary>Runs in which the hold was not found.</summary>
    public int Lost { get; }

    /// <summary>Declared, as a multiple of the ideal time: the median, and what 95 % of the runs keep.</summary>
    public double MedianTime { get; }

    public double LateTime { get; }

    /// <summary>Mean error of the settled value in sigma.</summary>
    public double Bias { get; }
}
