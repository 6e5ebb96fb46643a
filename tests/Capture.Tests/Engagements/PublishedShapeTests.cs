using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Capture.Tests.Engagements;

/// <summary>
/// The shape of a power-shift clutch's pressure as US Army TM 5-2420-222-34, 8-1 prints it for 1500 rpm, reverse to forward: 20 to 50 psi
/// within 0.1 s, 100 psi 0.8 to 1.2 s after the shift began, 145 to 165 psi within 1.2 s.
/// </summary>
public class PublishedShapeTests
{
    private const double KilopascalPerPsi = 6.894757;

    [Theory]
    [InlineData(35, 1.0, 155)]
    [InlineData(20, 0.8, 145)]
    [InlineData(50, 1.1, 165)]
    [InlineData(20, 1.1, 165)]
    public void A_clutch_that_fills_as_printed_is_read_as_printed(double jumpPsi, double hundredAt, double settledPsi)
    {
        EngagementRecord shape = Of(jumpPsi, hundredAt, settledPsi);
        Assert.InRange(shape.SettledHundredths / 100.0 * Replayed.PascalPerCount / 1000 / KilopascalPerPsi, settledPsi - 1, settledPsi + 1);
        Assert.InRange(shape.TotalMilliseconds, 800, 1200);
        Assert.InRange(shape.StartMicroseconds / 1e6, 9.98, 10.04);
        Assert.InRange(shape.OvershootPerMille, 0, 10);
    }

    [Theory]
    [InlineData(0.5, 0, 800)]
    [InlineData(1.6, 1200, 2000)]
    public void One_that_reaches_a_hundred_psi_too_soon_or_too_late_is_outside_what_is_printed(double hundredAt, int least, int most) =>
        Assert.InRange(Of(35, hundredAt, 155).TotalMilliseconds, least, most);

    /// <summary>Straight from the jump to 100 psi, and on to the settled pressure within the next tenth of a second.</summary>
    private static EngagementRecord Of(double jumpPsi, double hundredAt, double settledPsi)
    {
        double Psi(double since) => since < 0 ? 0
            : since < 0.1 ? jumpPsi * since / 0.1
            : since < hundredAt ? jumpPsi + ((100 - jumpPsi) * (since - 0.1) / (hundredAt - 0.1))
            : Math.Min(settledPsi, 100 + ((settledPsi - 100) * (since - hundredAt) / 0.1));
        Random random = new(4);
        List<Row> rows = [.. Enumerable.Range(0, 2000).Select(i => i / 100.0).Select(time => new Row(
            time,
            1500 + (6 * (random.NextDouble() - 0.5)),
            1150 + (2 * (random.NextDouble() - 0.5)),
            (Psi(time - 10) * KilopascalPerPsi) + (2 * (random.NextDouble() - 0.5)),
            150,
            time < 10 ? Gear.Neutral : Gear.Forward))];
        return Assert.Single(Replayed.Run(rows).Engagements);
    }
}
