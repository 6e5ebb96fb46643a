using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using LoggerBox.TruckSimulator.Truck;
using Xunit;

namespace LoggerBox.Simulator.Tests;

public sealed class StallPointTests
{
    // Source of both tables: tests/recordings/tables/README.md. 1649.9 rpm and 2101.3 N m are its matching columns.
    [Fact]
    public void A_published_converter_on_its_published_engine_stalls_where_the_match_table_says()
    {
        Curve engine = new(Rows("diesel_full_load_curve.csv").SelectMany(row => new[] { row[0], row[1] }).ToArray());
        List<double[]> rows = Rows("torque_converter_430mm_match.csv").ToList();
        double torqueAt1000 = 860 * 9.8 * 1e-6 * 1e6 * Math.Pow(0.43, 5);
        var converter = new ConverterParameters(
            new Curve(rows.SelectMany(row => new[] { row[0], torqueAt1000 * row[3] }).ToArray()),
            new Curve(rows.SelectMany(row => new[] { row[0], row[1] }).ToArray()));

        (double rpm, double torque) = SteadyStall.Of(engine, converter);

        Assert.Equal(1649.9, rpm, 0.5);
        Assert.Equal(2101.3, torque, 1.0);
        Assert.Equal(4055.5, new TorqueConverter(converter).At(rpm, 0).Turbine, 3.0);
    }

    // Regulation (EU) 2017/2400, annex VI, appendix 9: stall at 70 % of rated speed and 80 % of the greatest torque.
    // Rated 2200 rpm and 400 N m (chosen here) give T1000 = 134.9 N m, 1540 rpm, 320 N m.
    [Fact]
    public void The_generic_converter_of_the_regulation_stalls_at_its_design_point()
    {
        const double Rated = 2200;
        const double Greatest = 400;
        double capacity = 0.8 * Greatest * Math.Pow(1000 / (0.7 * Rated), 2);
        Assert.Equal(134.9, capacity, 0.05);
        var converter = new ConverterParameters(
            new Curve(0, capacity, 0.6, 0.8 * capacity, 0.9, 0.5 * capacity, 1, 0), new Curve(0, 1.8, 0.9, 1, 1, 1));

        (double rpm, double torque) = SteadyStall.Of(new Curve(0, 320, 3000, 320), converter);

        Assert.Equal(1540, rpm, 0.5);
        Assert.Equal(320, torque, 0.5);
    }

    // Common practice, no source: T = 150 - 2.6e-5 (n - 1700)^2 N m, 10 N m of loads, K = 168 rpm per root N m. The speeds are
    // computed from these formulas.
    [Theory]
    [InlineData(1.00, 1974)]
    [InlineData(0.95, 1925)]
    [InlineData(0.90, 1873)]
    [InlineData(0.80, 1761)]
    [InlineData(0.70, 1637)]
    public void A_weaker_engine_stalls_lower(double torqueShare, double expectedRpm)
    {
        (double rpm, double torque) = SteadyStall.Of(Parabola(), WithFactor(168), accessoryTorque: 10, torqueShare);

        Assert.Equal(expectedRpm, rpm, 1.5);
        if (torqueShare == 1)
        {
            Assert.Equal(138, torque, 0.5);
        }
    }

    // Same engine; K times 0.75, 0.70, 0.67 for a stator that freewheels (computed from the formulas).
    [Theory]
    [InlineData(0.75, 1484)]
    [InlineData(0.70, 1378)]
    [InlineData(0.67, 1313)]
    public void A_converter_that_takes_more_stalls_the_engine_lower(double factor, double expectedRpm) =>
        Assert.Equal(expectedRpm, SteadyStall.Of(Parabola(), WithFactor(168 * factor), accessoryTorque: 10).Rpm, 2.0);

    private static Curve Parabola() => new(
        Enumerable.Range(0, 400).SelectMany(i => new[] { i * 10.0, 150 - 2.6e-5 * Math.Pow(i * 10.0 - 1700, 2) }).ToArray());

    private static ConverterParameters WithFactor(double rpmPerRootNewtonMetre) =>
        new(new Curve(0, Math.Pow(1000 / rpmPerRootNewtonMetre, 2), 1, 0), new Curve(0, 2.23, 1, 1));

    private static IEnumerable<double[]> Rows(string table) =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "tables", table))
            .Skip(1)
            .Where(line => line.Length > 0)
            .Select(line => line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray());
}
