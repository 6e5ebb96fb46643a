using System;
using System.Globalization;
using LoggerBox.Capture.Tests.Holds.Runs;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Benchmarks.Holds;

/// <summary>How well holds are found: settling, drifts and correlated noise, many seeded runs, printed as tables.</summary>
internal static class HoldTable
{
    private const int Seed = 1;

    // 2 and 8 kPa, 4 and 10 rpm: a quiet and a noisy truck.
    private static readonly (int Channel, double Sigma, string Name)[] Noises =
        [(Channel.Main, 20, "2 kPa"), (Channel.Main, 80, "8 kPa"), (Channel.Speed, 40, "4 rpm"), (Channel.Speed, 100, "10 rpm")];

    public static int Run(string[] words)
    {
        int runs = words.Length > 0 ? int.Parse(words[0], CultureInfo.InvariantCulture) : 1000;
        Console.WriteLine($"Seed {Seed}. Settling, {runs / 10} runs a cell: median and 95 % of declared / ideal, bias in sigma, holds lost.");
        Settling(runs / 10);
        Console.WriteLine($"\nDrifts of 5 s, {runs} each: holds that claim to stand (and those that say they drift), alone / between two stands.");
        Drifts(runs);
        Console.WriteLine($"\nPrinted intervals of 95.45 %, {runs} runs a cell: covered %, half-width in sigma, settled part in s, holds lost.");
        Coverage(runs);
        return 0;
    }

    private static void Settling(int runs)
    {
        foreach ((int channel, double sigma, string name) in Noises)
        {
            foreach (double amplitude in new[] { 20.0, 100, 500 })
            {
                if (sigma * amplitude > Signals.Level(channel) * 1.01)
                {
                    continue;
                }

                Console.Write($"sigma {name,-6} amplitude {amplitude,3}");
                foreach (double timeConstant in new[] { 0.1, 0.5, 1, 2 })
                {
                    SettlingRuns cell = new(channel, sigma, amplitude, timeConstant, 6, runs, Seed);
                    Console.Write(string.Create(CultureInfo.InvariantCulture, $" | {timeConstant:0.0} s: {cell.MedianTime:0.00} {cell.LateTime:0.00}, {cell.Bias,6:0.00}, {cell.Lost}"));
                }

                Console.WriteLine();
            }
        }
    }

    private static void Drifts(int runs)
    {
        foreach ((int channel, double sigma, string name) in Noises)
        {
            Console.Write($"sigma {name,-6}");
            foreach (double slope in new[] { 1.0, 2, 5, 20 })
            {
                RampRuns alone = new(channel, sigma, slope, 5, false, runs, Seed);
                RampRuns between = new(channel, sigma, slope, 5, true, runs, Seed);
                Console.Write($" | {slope,2} sigma/s: {alone.False} ({alone.Drifting}) / {between.False} ({between.Drifting})");
            }

            Console.WriteLine();
        }
    }

    private static void Coverage(int runs)
    {
        foreach (double correlation in new[] { 0, 0.5, 0.9, 0.98 })
        {
            Console.Write(string.Create(CultureInfo.InvariantCulture, $"AR(1) {correlation,4}"));
            foreach (double seconds in new[] { 3.0, 5, 10, 20 })
            {
                CoverageRuns cell = new(Channel.Main, 20, correlation, seconds, Signals.PerSecond, runs, Seed);
                Console.Write(string.Create(
                    CultureInfo.InvariantCulture, $" | {seconds,2} s: {cell.Covered:0.0} {cell.Expanded:0.00} {cell.Seconds:0.0} {cell.Lost}"));
            }

            Console.WriteLine();
        }
    }
}
