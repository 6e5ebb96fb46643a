using System;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Tests.Holds.Runs;

/// <summary>What a channel reads in one run, in its own unit (tenths of rpm, counts), noise and rounding of the reading included.</summary>
internal static class Signals
{
    public const double PerSecond = 50;

    /// <summary>2000 rpm, or 1000 kPa: what most readings of a truck lie near.</summary>
    public static double Level(int channel) => channel == Channel.Speed ? 20000 : 1000 * FoundHolds.CountsPerKilopascal;

    /// <summary>Comes to the level from <paramref name="amplitude"/> below it, in units of sigma, with the time constant; then it stands for <paramref name="standing"/> seconds.</summary>
    public static double[] Settling(int channel, double sigma, double amplitude, double timeConstant, double standing, Noise noise)
    {
        double[] values = new double[(int)((Ideal(amplitude, timeConstant) + standing) * PerSecond)];
        for (int i = 0; i < values.Length; i++)
        {
            double tail = amplitude * Math.Exp(-i / PerSecond / timeConstant);
            values[i] = Level(channel) + (sigma * (noise.Next() - tail));
        }

        return values;
    }

    /// <summary>When the noise-free tail has come under half a sigma, seconds.</summary>
    public static double Ideal(double amplitude, double timeConstant) => timeConstant * Math.Log(amplitude / 0.5);

    /// <summary>A straight drift of <paramref name="slope"/> sigma a second.</summary>
    public static double[] Ramp(int channel, double sigma, double slope, double seconds, double perSecond, Noise noise)
    {
        double[] values = new double[(int)(seconds * perSecond)];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = Level(channel) + (sigma * ((slope * i / perSecond) + noise.Next()));
        }

        return values;
    }

    public static double[] Standing(int channel, double sigma, double seconds, double perSecond, Noise noise) =>
        Ramp(channel, sigma, 0, seconds, perSecond, noise);
}
