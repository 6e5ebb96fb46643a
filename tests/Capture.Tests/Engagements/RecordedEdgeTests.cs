using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Capture.Tests.Engagements;

/// <summary>
/// Real edges of pressure, source in NOTICE: mid-level crossings and times from 10 to 90 % by plain smoothing, in tests/recordings/README.md.
/// The plateau under an edge is taken for the empty clutch and the step for a clutch's pressure; a fall is read as the rise of its mirror
/// image. Neither moves a time.
/// </summary>
public class RecordedEdgeTests
{
    /// <summary>What the smoothing behind the published times leaves open.</summary>
    private const double Method = 0.05;

    private const string FourBar = "3.73 6.59 10.44 13.29 17.16 20.02 23.88 26.73 30.59 33.44 37.30 40.18 44.02 46.90 50.72 53.60 57.44 60.30 64.14";
    private const string FiveBar = "7.51 10.96 18.44 21.87 29.37 32.80 40.10 43.52 50.80 54.25 61.30 64.76 71.83 75.29 82.34 85.80 92.75 96.22 103.07";
    private const string SevenBar = "5.01 7.77 12.92 15.69 20.83 23.62 28.84 31.73 37.06 39.92 45.27 48.15 53.48 56.36 61.69 64.56 69.90 72.78 78.22";

    /// <summary>
    /// The noise is up to a twentieth of the smaller steps, ten times a transducer's beside a clutch's pressure: what it disturbs does not
    /// count, here as in a truck.
    /// </summary>
    [Theory]
    [InlineData("4", FourBar, 3.952, 4.058, true, 0.40, 0.50, 6)]
    [InlineData("4", FourBar, 3.952, 4.058, false, 0.36, 0.54, 4)]
    [InlineData("5", FiveBar, 4.969, 5.045, true, 0.37, 0.52, 2)]
    [InlineData("5", FiveBar, 4.969, 5.045, false, 0.36, 0.44, 8)]
    [InlineData("7", SevenBar, 6.918, 7.065, true, 0.325, 0.364, 9)]
    [InlineData("7", SevenBar, 6.918, 7.065, false, 0.49, 0.56, 10)]
    public void What_counts_as_an_edge_is_one_and_rises_as_long_as_it_does(
        string file, string edges, double low, double high, bool up, double least, double most, int leastFound)
    {
        // A file that begins in mid-rise has one edge more than its list.
        List<EngagementRecord> all = Edges(file, up ? low : high, up ? high : low);
        Assert.All(all, edge => Assert.True(edge.RiseMilliseconds >= 0 && edge.TotalMilliseconds > 0));
        List<EngagementRecord> found = [.. all.Where(edge => !edge.Disturbed && Start(edge) > 1)];
        List<double> middles = [.. edges.Split(' ').Select(text => double.Parse(text, CultureInfo.InvariantCulture)).Where((_, i) => (i % 2 == 1) == up)];
        Assert.InRange(found.Count, leastFound, middles.Count);
        Assert.All(found, edge =>
        {
            Assert.Single(middles, middle => Start(edge) < middle && middle < Start(edge) + (edge.TotalMilliseconds / 1000.0));
            Assert.InRange(edge.RiseMilliseconds / 1000.0, least - Method, most + Method);
        });
    }

    private static double Start(EngagementRecord edge) => edge.StartMicroseconds / 1e6;

    private static List<EngagementRecord> Edges(string file, double from, double to) =>
        Replayed.Run([.. Recording.Column($"pneumatic/cycle-{file}bar.csv", "pressure_bar")
            .Select(point => new Row(point.Seconds, 740, 1200, 1000 * (point.Value - from) / (to - from), 300))]).Engagements;
}
