using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture.Speed;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Tests.Speed;

/// <summary>
/// A pickup on an engine that turns evenly, polled every 10 ms. Beside each reading stands what least squares could do at best with the
/// brackets that were polled: each edge is known to lie in its bracket and nothing more (uniform error of the bracket's width).
/// </summary>
internal sealed class PolledPickup(int pulses, int revolutions, double rpm, Random random)
{
    public const long PollMicroseconds = 10000;
    private const int LateMicroseconds = 2000;
    private const double WindowMicroseconds = 500000;
    private const int FewestEdges = 4;

    private readonly double period = 60e6 / rpm * revolutions / pulses;
    private readonly List<(double Time, long Count, double Width)> brackets = [];

    /// <summary>Of so many pulses one is not counted, or counted twice; 0: none.</summary>
    public int LostOneIn { get; init; }

    public int DoubledOneIn { get; init; }

    /// <summary>Errors in rpm and the bound of each, three and a half seconds of readings, four a second, from the fifth second on.</summary>
    public IEnumerable<(double Error, double Bound)> Readings() => WithUncertainty().Select(reading => (reading.Error, reading.Bound));

    /// <summary>The same with what the estimator says of each.</summary>
    public IEnumerable<(double Error, double Uncertainty, double Bound)> WithUncertainty()
    {
        SampleSet sample = new();
        PulseSpeed speed = new(pulses, revolutions);
        double phase = random.NextDouble();
        long real = 0, counted = 0, seen = 0;
        for (int poll = 1; poll <= 750; poll++)
        {
            long now = (poll * PollMicroseconds) + random.Next(LateMicroseconds);
            for (; real < (long)((now / period) + phase); real++)
            {
                counted += LostOneIn > 0 && random.Next(LostOneIn) == 0 ? 0 : DoubledOneIn > 0 && random.Next(DoubledOneIn) == 0 ? 2 : 1;
            }

            speed.Poll(counted, now);
            if (real != seen)
            {
                brackets.Add((now, real, Math.Min(PollMicroseconds, period)));
                seen = real;
            }

            if (poll > 400 && poll % 25 == 0)
            {
                speed.Read(sample, now);
                int tenths = sample.Values[Channel.Speed];
                yield return ((tenths == SampleSet.Missing ? 0 : tenths / 10.0) - rpm, sample.SpeedUncertaintyHundredths / 1000.0, Bound());
            }
        }
    }

    private double Bound()
    {
        int first = brackets.Count - FewestEdges;
        while (first > 0 && brackets[^1].Time - brackets[first - 1].Time <= WindowMicroseconds)
        {
            first--;
        }

        double mean = 0, spread = 0, weights = 0;
        for (int i = first; i < brackets.Count; i++)
        {
            double weight = 12 / (brackets[i].Width * brackets[i].Width);
            weights += weight;
            double before = mean;
            mean += weight / weights * (brackets[i].Count - mean);
            spread += weight * (brackets[i].Count - before) * (brackets[i].Count - mean);
        }

        return rpm / period / Math.Sqrt(spread);
    }
}
