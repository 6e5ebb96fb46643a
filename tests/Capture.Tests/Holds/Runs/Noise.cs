using System;

namespace LoggerBox.Capture.Tests.Holds.Runs;

/// <summary>Gaussian noise of unit standard deviation, each reading correlated with the one before (AR(1)); the same seed gives the same noise.</summary>
internal sealed class Noise(int seed, double correlation = 0)
{
    private readonly Random random = new(seed);
    private double last = double.NaN;

    public double Next()
    {
        double fresh = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        last = double.IsNaN(last) ? fresh : (correlation * last) + (Math.Sqrt(1 - (correlation * correlation)) * fresh);
        return last;
    }
}
