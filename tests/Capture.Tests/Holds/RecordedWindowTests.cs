using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture.Tests.Holds.Runs;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Capture.Tests.Holds;

/// <summary>
/// Real recordings, sources in NOTICE; windows and edges picked by hand with plain statistics, in tests/recordings/README.md. Pressures
/// of a few kPa are read as if they were a hundred times as large, which is what the same transducer in a truck would see.
/// </summary>
public class RecordedWindowTests
{
    private const double Rpm = 10;
    private const double Kilopascal = FoundHolds.CountsPerKilopascal;
    private const double Blower = 100 * Kilopascal;

    [Theory]
    [InlineData("engine-idle/idle-blips-stop-restart.csv", "rpm", Rpm, 266, 288, 950.8447)]
    [InlineData("engine-idle/idle-blips-stop-restart.csv", "rpm", Rpm, 87, 90, 0)]
    [InlineData("diesel-idle/governed-idle.csv", "rpm", Rpm, 0, 31, 797.3965)]
    [InlineData("diesel-idle/governed-idle-oil.csv", "oil_kPa", Kilopascal, 0, 31, 158.4984)]
    [InlineData("blower/blower-26666.csv", "pressure_kPa", Blower, 0.3, 3.8, 3.1661)]
    [InlineData("blower/blower-26666.csv", "pressure_kPa", Blower, 9.3, 10.9, 0.0305)]
    [InlineData("blower/blower-24000.csv", "pressure_kPa", Blower, 0.5, 8, 2.6029)]
    [InlineData("blower/blower-24000.csv", "pressure_kPa", Blower, 24.5, 27, 0.0114)]
    [InlineData("blower/blower-24000.csv", "pressure_kPa", Blower, 27.6, 28.8, 2.567)]
    [InlineData("blower/blower-21818.csv", "pressure_kPa", Blower, 0.3, 3.5, 2.0388)]
    public void A_window_that_stands_is_a_hold(string file, string column, double scale, double from, double to, double mean)
    {
        FoundHold hold = Assert.Single(Holds(file, column, scale), hold => hold.Overlap(from, to) > 0.8 * (to - from));
        Assert.InRange(hold.Settled / scale, mean - Math.Max(0.02 * mean, 0.02), mean + Math.Max(0.02 * mean, 0.02));
    }

    [Theory]
    [InlineData(5.8, 6.8)]
    [InlineData(14.3, 14.9)]
    [InlineData(9, 15.4)]
    public void A_window_that_drifts_is_none(double from, double to) =>
        Assert.DoesNotContain(Holds("engine-blips/blips-then-stall.csv", "rpm", Rpm), hold => hold.Overlap(from, to) > 0);

    [Theory]
    [InlineData("engine-idle/idle-blips-stop-restart.csv", "rpm", Rpm)]
    [InlineData("diesel-idle/governed-idle.csv", "rpm", Rpm)]
    [InlineData("diesel-idle/governed-idle-oil.csv", "oil_kPa", Kilopascal)]
    [InlineData("blower/blower-26666.csv", "pressure_kPa", Blower)]
    [InlineData("blower/blower-24000.csv", "pressure_kPa", Blower)]
    [InlineData("blower/blower-21818.csv", "pressure_kPa", Blower)]
    [InlineData("pneumatic/cycle-4bar.csv", "pressure_bar", 100 * Kilopascal)]
    [InlineData("pneumatic/cycle-5bar.csv", "pressure_bar", 100 * Kilopascal)]
    [InlineData("pneumatic/cycle-7bar.csv", "pressure_bar", 100 * Kilopascal)]
    public void A_hold_agrees_with_the_plain_mean_of_its_own_samples(string file, string column, double scale)
    {
        List<(double Seconds, double Value)> rows = Recording.Column(file, column);
        Assert.All(Holds(file, column, scale), hold =>
        {
            double[] own = rows.Where(row => row.Seconds >= hold.Start && row.Seconds < hold.End).Select(row => row.Value).Where(IsNoDropOut).ToArray();
            double allowed = Math.Max(0.005 * Math.Abs(own.Average()), 2 * hold.StandardError / scale);
            Assert.InRange(hold.Settled / scale, own.Average() - allowed, own.Average() + allowed);
        });
    }

    /// <summary>The low plateaus of the third file sink on; five of them are too short to be told from a drift.</summary>
    [Theory]
    [InlineData("4", 3.95, "3.73 6.59 10.44 13.29 17.16 20.02 23.88 26.73 30.59 33.44 37.30 40.18 44.02 46.90 50.72 53.60 57.44 60.30 64.14", 4.058, 3.952, 19)]
    [InlineData("5", 4.965, "7.51 10.96 18.44 21.87 29.37 32.80 40.10 43.52 50.80 54.25 61.30 64.76 71.83 75.29 82.34 85.80 92.75 96.22 103.07", 5.045, 4.969, 19)]
    [InlineData("7", 6.918, "5.01 7.77 12.92 15.69 20.83 23.62 28.84 31.73 37.06 39.92 45.27 48.15 53.48 56.36 61.69 64.56 69.90 72.78 78.22", 7.065, 6.918, 14)]
    public void Between_two_edges_lies_one_plateau(string file, double low, string edges, double highBar, double lowBar, int least)
    {
        // A step of a tenth of a bar in a clutch of 7 bar: the low plateau is taken off, the rest read thirty times as large.
        List<FoundHold> holds = Holds($"pneumatic/cycle-{file}bar.csv", "pressure_bar", 30000, low - 0.1);
        double[] times = [.. edges.Split(' ').Select(text => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture))];
        int found = 0;
        for (int i = 0; i < times.Length; i++)
        {
            Assert.DoesNotContain(holds, hold => hold.Start < times[i] && hold.End > times[i]);
            double next = i + 1 < times.Length ? times[i + 1] : double.PositiveInfinity;
            if (holds.SingleOrDefault(hold => hold.Start > times[i] && hold.End < next + 0.05) is not { } plateau)
            {
                continue;
            }

            found++;
            double expected = i % 2 == 0 ? lowBar : highBar;
            Assert.InRange((plateau.Settled / 30000) + low - 0.1, expected - 0.006, expected + 0.006);
        }

        Assert.InRange(found, least, times.Length);
    }

    /// <summary>A sensor that gave no reading wrote its zero: -1.1 kPa.</summary>
    private static bool IsNoDropOut(double value) => value > -1;

    private static List<FoundHold> Holds(string file, string column, double scale, double offset = 0)
    {
        List<(double Seconds, double Value)> rows = Recording.Column(file, column);
        int channel = column == "rpm" ? Channel.Speed : Channel.Main;
        return FoundHolds.In(channel, rows.Select(row => row.Seconds).ToArray(), rows.Select(row => (row.Value - offset) * scale).ToArray());
    }
}
