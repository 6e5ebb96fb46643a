using System;

namespace LoggerBox.Protocol.Tests.Encoding;

/// <summary>
/// Ten minutes of four channels at 100 sets a second, 0 to 4095 counts: levels that run to new targets every 3 to 18 s (idle, part load,
/// hold, stall) with lags of 0.6, 0.25, 0.35 and 0.5 s, a ripple, and Gaussian noise. Invented, and always the same for a seed.
/// </summary>
public static class GeneratedTrace
{
    public const int Sets = 60_000;
    public const int Channels = 4;
    public const uint IntervalMicroseconds = 10_000;

    private const double StepSeconds = 0.01;
    private static readonly double[] Lags = [0.6, 0.25, 0.35, 0.5];

    /// <summary>Entropy of the rounded noise alone, bytes a set: no lossless code goes below it.</summary>
    public static double NoiseEntropy(double sigma)
    {
        double bits = 0;
        for (int k = (int)(-12 * sigma); k <= 12 * sigma; k++)
        {
            // The bin's share by fine steps of the bell curve: exact enough at a thousand a bin.
            double share = 0;
            for (int i = 0; i < 1000; i++)
            {
                double x = (k - 0.5 + ((i + 0.5) / 1000)) / sigma;
                share += Math.Exp(-x * x / 2) / Math.Sqrt(2 * Math.PI) / sigma / 1000;
            }

            bits -= share > 0 ? share * Math.Log2(share) : 0;
        }

        return bits * Channels / 8;
    }

    /// <summary>Sets after each other, the four channels of each together.</summary>
    public static short[] Counts(double sigma, double ripple, int seed)
    {
        Random random = new(seed);
        double[] levels = [750, 900, 420, 300];
        double[] targets = [.. levels];
        double nextPhase = 0;
        short[] counts = new short[Sets * Channels];
        for (int i = 0; i < Sets; i++)
        {
            double seconds = i * StepSeconds;
            if (seconds >= nextPhase)
            {
                nextPhase = seconds + Between(random, 3, 18);
                targets = Phase(random);
            }

            for (int c = 0; c < Channels; c++)
            {
                levels[c] += (targets[c] - levels[c]) * StepSeconds / Lags[c];
                double value = levels[c] + (ripple * Math.Sin((2 * Math.PI * (0.7 + (0.9 * c)) * seconds) + c)) + (sigma * Gaussian(random));
                counts[(i * Channels) + c] = (short)Math.Clamp(Math.Round(value), 0, 4095);
            }
        }

        return counts;
    }

    /// <summary>White noise over all 16 bits but the code of a missing reading.</summary>
    public static short[] FullScaleNoise(int seed)
    {
        Random random = new(seed);
        short[] counts = new short[Sets * Channels];
        for (int i = 0; i < counts.Length; i++)
        {
            counts[i] = (short)random.Next(short.MinValue + 1, short.MaxValue + 1);
        }

        return counts;
    }

    private static double[] Phase(Random random) => random.Next(4) switch
    {
        0 => [750, 900, 420, 300],
        1 => [Between(random, 1400, 1600), Between(random, 1500, 1700), 900, 650],
        2 => [Between(random, 2050, 2130), Between(random, 2400, 2550), 1500, 1200],
        _ => [1700, 2900, 2300, 700],
    };

    private static double Between(Random random, double low, double high) => low + ((high - low) * random.NextDouble());

    private static double Gaussian(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
