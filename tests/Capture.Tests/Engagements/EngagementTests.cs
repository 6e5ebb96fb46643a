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

    private static double Clutch(double since, double fill, double tau) => since < 0 ? 0
        : since < fill ? Plateau
        : Settled - ((Settled - Plateau) * Math.Exp(-(since - fill) / tau));
}
