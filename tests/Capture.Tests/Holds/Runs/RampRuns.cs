using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Tests.Holds.Runs;

/// <summary>Straight drifts, alone or between two stands. A hold that lies for more than half of its length on the drift and does not say that it drifts is false.</summary>
internal sealed class RampRuns
{
    public RampRuns(int channel, double sigma, double slope, double seconds, bool between, int runs, int seed)
    {
        for (int run = 0; run < runs; run++)
        {
            Noise noise = new(seed + run);
            double before = between ? 4 : 0;
            double[] ramp = Signals.Ramp(channel, sigma, slope, seconds, Signals.PerSecond, noise);
            double[] values = between ? [.. Stand(channel, sigma, 0, noise), .. ramp, .. Stand(channel, sigma, slope * seconds, noise)] : ramp;
            List<FoundHold> holds = FoundHolds.In(channel, values, Signals.PerSecond);
            List<FoundHold> onIt = holds.FindAll(hold => hold.Overlap(before, before + seconds) > hold.Length / 2);
            False += onIt.Exists(hold => !hold.Drifts) ? 1 : 0;
            Drifting += onIt.Count > 0 && onIt.TrueForAll(hold => hold.Drifts) ? 1 : 0;
        }
    }

    /// <summary>Runs with a hold that claims to stand.</summary>
    public int False { get; }

    /// <summary>Runs whose holds all say that they drift.</summary>
    public int Drifting { get; }

    private static IEnumerable<double> Stand(int channel, double sigma, double at, Noise noise) =>
        Signals.Standing(channel, sigma, 4, Signals.PerSecond, noise).Select(value => value + (sigma * at));
}
