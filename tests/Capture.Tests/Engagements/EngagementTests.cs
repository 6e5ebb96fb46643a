using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Capture.Tests.Engagements;

/// <summary>
/// A clutch that fills on a plateau and then rises as a first-order lag reaches 90 % of its settled pressure after
/// tau * ln((1 - plateau) / 0.1): the step response of first order (common knowledge of control engineering).
/// </summary>
public class EngagementTests
{
    private const double Settled = 400;
    private const double Plateau = 60;

    [Theory]
    [InlineData(50, 0.4, 0.25, 0)]
    [InlineData(100, 0.4, 0.25, 0.6)]
    [InlineData(20, 0.5, 0.3, 0)]
    [InlineData(200, 0.3, 0.2, 0.9)]
    [InlineData(50, 0.4, 1.0, 0.3)]
    public void Fill_and_total_are_read_off_the_pressure_however_late_the_tag(int rate, double fill, double tau, double tagLate)
    {
        EngagementRecord engagement = Assert.Single(Run(rate, fill, tau, tagLate).Engagements);
        double rise = tau * Math.Log((Settled - Plateau) / (0.1 * Settled));
        double step = 1.0 / rate;
        Assert.Equal(Gear.Forward, engagement.Gear);
        Assert.InRange(engagement.StartMicroseconds / 1e6, 10 - step, 10 + 0.03 + (2 * step));
        Assert.InRange(engagement.FillMilliseconds / 1000.0, fill - 0.03 - (2 * step), fill + (0.1 * tau) + (2 * step));
        Assert.InRange(engagement.TotalMilliseconds / 1000.0, fill + rise - 0.05 - (2 * step), fill + rise + 0.05 + (2 * step));
        Assert.Equal(engagement.TotalMilliseconds, engagement.FillMilliseconds + engagement.RiseMilliseconds);
        Assert.False(engagement.Disturbed);
    }

    [Fact]
    public void A_pedal_that_moves_before_the_clutch_has_settled_disturbs_it()
    {
        List<Row> rows = Rows(50, 0.4, 0.5, 0).Select(row => row.Seconds > 10.7 ? row with { Rpm = 1500 } : row).ToList();
        Assert.DoesNotContain(Replayed.Run(rows).Engagements, engagement => !engagement.Disturbed);
    }

    /// <summary>Pressure follows the pump: what a raised pedal adds is none of the level that the clutch had reached.</summary>
    [Theory]
    [InlineData(2.5)]
    [InlineData(4)]
    public void A_pedal_that_moves_after_the_clutch_has_settled_changes_no_time(double after)
    {
        const double fill = 0.4, tau = 0.25;
        List<Row> rows = Rows(50, fill, tau, 0).Select(row => Raised(row, Math.Clamp((row.Seconds - 10 - after) / 1.2, 0, 1))).ToList();
        EngagementRecord engagement = Assert.Single(Replayed.Run(rows).Engagements);
        double total = fill + (tau * Math.Log((Settled - Plateau) / (0.1 * Settled)));
        Assert.False(engagement.Disturbed);
        Assert.InRange(engagement.TotalMilliseconds / 1000.0, total - 0.09, total + 0.09);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(20.7)]
    [InlineData(40)]
    public void What_trickles_into_a_clutch_does_not_fill_it(double kilopascal)
    {
        Random random = new(7);
        List<Row> rows = Rows(50, 0.4, 0.3, 0).Select(row => row with { ClutchKilopascal = row.Seconds < 10 ? 0 : kilopascal + (4 * random.NextDouble()) - 2 }).ToList();
        EngagementRecord engagement = Assert.Single(Replayed.Run(rows).Engagements);
        Assert.True(engagement.NeverFilled);
        Assert.Equal(Gear.Forward, engagement.Gear);
    }

    /// <summary>A shuttling truck at ten rows a second: so many holds that naming them takes longer than the next shift is away.</summary>
    [Fact]
    public void None_is_lost_where_rows_are_far_apart()
    {
        var rows = new List<Row>();
        for (int i = 0; i < 20 * 90; i++)
        {
            double inTurn = i % 90 / 10.0;
            Gear gear = inTurn < 3 ? Gear.Neutral : i / 90 % 2 == 0 ? Gear.Forward : Gear.Reverse;
            rows.Add(new Row(i / 10.0, 740, 420, gear == Gear.Neutral ? 0 : Clutch(inTurn - 3, 0.4, 0.25), 150, gear));
        }

        Assert.Equal(20, Replayed.Run(rows).Engagements.Count(engagement => !engagement.Disturbed));
    }

    [Fact]
    public void A_gear_whose_clutch_stays_empty_never_filled()
    {
        List<Row> rows = Rows(50, 0.4, 0.3, 0).Select(row => row with { ClutchKilopascal = 0 }).ToList();
        EngagementRecord engagement = Assert.Single(Replayed.Run(rows).Engagements);
        Assert.True(engagement.NeverFilled);
        Assert.Equal(Gear.Forward, engagement.Gear);
    }

    [Fact]
    public void With_the_engine_off_a_moved_lever_is_no_engagement()
    {
        List<Row> rows = Rows(50, 0.4, 0.3, 0).Select(row => row with { Rpm = 0, ClutchKilopascal = 0, MainKilopascal = 0 }).ToList();
        Assert.Empty(Replayed.Run(rows).Engagements);
    }

    private static Replayed Run(int rate, double fill, double tau, double tagLate) => Replayed.Run(Rows(rate, fill, tau, tagLate));

    private static List<Row> Rows(int rate, double fill, double tau, double tagLate)
    {
        Random random = new(5);
        var rows = new List<Row>();
        for (int i = 0; i < 20 * rate; i++)
        {
            double time = (double)i / rate;
            double noise = random.NextDouble() - 0.5;
            Gear gear = time < 10 + tagLate ? Gear.Neutral : Gear.Forward;
            rows.Add(new Row(time, 740 + (4 * noise), 420 + noise, Clutch(time - 10, fill, tau) + noise, 150 + noise, gear));
        }

        return rows;
    }

    private static Row Raised(Row row, double pedal) => row with
    {
        Rpm = row.Rpm + (1250 * pedal),
        MainKilopascal = row.MainKilopascal + (500 * pedal),
        ClutchKilopascal = row.ClutchKilopascal + (500 * pedal),
    };

    private static double Clutch(double since, double fill, double tau) => since < 0 ? 0
        : since < fill ? Plateau
        : Settled - ((Settled - Plateau) * Math.Exp(-(since - fill) / tau));
}
