using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Tests.Holds.Runs;

/// <summary>Straight drifts, alone or between two stands. A hold that lies for more than half of its length on the drift is false.</summary>
internal static class RampRuns
{
    public static int FalseHolds(int channel, double sigma, double slope, double seconds, bool between, int runs, int seed)
    {
        int found = 0;
        for (int run = 0; run < runs; run++)
        {
            Noise noise = new(seed + run);
            double before = between ? 4 : 0;
            double[] ramp = Signals.Ramp(channel, sigma, slope, seconds, Signals.PerSecond, noise);
            double[] values = between ? [.. Stand(channel, sigma, 0, noise), .. ramp, .. Stand(channel, sigma, slope * seconds, noise)] : ramp;
            List<FoundHold> holds = FoundHolds.In(channel, values, Signals.PerSecond);
            found += holds.Exists(hold => hold.Overlap(before, before + seconds) > hold.Length / 2) ? 1 : 0;
        }

        return found;
    }

    private static IEnumerable<double> Stand(int channel, double sigma, double at, Noise noise) =>
        Signals.Standing(channel, sigma, 4, Signals.PerSecond, noise).Select(value => value + (sigma * at));
}
