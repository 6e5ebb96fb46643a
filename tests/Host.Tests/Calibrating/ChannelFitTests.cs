using System;
using System.Linq;
using LoggerBox.Host.Calibrating;
using LoggerBox.Host.Units;
using Xunit;

namespace LoggerBox.Host.Tests.Calibrating;

/// <summary>
/// Zero and span from what was read. A 4 to 20 mA loop (IEC 60381-1, from memory) over 100 ohm on a converter of 125 microvolt: 4, 12 and 20 mA are 3200,
/// 9600 and 16000 counts, 0, 250 and 500 psi of a 500 psi transducer (NIST SP 811 for the unit).
/// </summary>
public class ChannelFitTests
{
    private static readonly double Psi = PressureUnit.Psi.InPascal();
    private static readonly double Range = 500 * Psi;

    [Fact]
    public void A_perfect_transducer_is_found_perfect()
    {
        ChannelFit fit = Fit((0, 3200), (100, 5760), (450, 14720))!;
        Assert.Equal((3200, 12800), (fit.ZeroCounts, fit.SpanCounts));
        Assert.Equal(Range, fit.SpanPascal, 0.5);
        Assert.Equal(250 * Psi, fit.PascalAt(9600), 0.5);
        Assert.InRange(fit.LargestResidual, 0, 0.5);
    }

    [Theory]
    [InlineData(0.4, 40)]
    [InlineData(0.25, 1.5)]
    [InlineData(-0.3, -60)]
    public void Zero_and_span_of_a_transducer_that_is_off_are_found_and_take_its_error_out(double offPercent, double zeroCounts)
    {
        double Counts(double psi) => 3200 + zeroCounts + (12800 * (1 + (offPercent / 100)) * psi / 500);
        ChannelFit fit = Fit((0, Counts(0)), (100, Counts(100)), (450, Counts(450)))!;

        // A tenth of the transducer's class, 0.25 % of 500 psi; half a count of the zero is 0.02 psi.
        foreach (double psi in (double[])[0, 60, 250, 500])
        {
            Assert.Equal(psi, fit.PascalAt(Counts(psi)) / Psi, 0.05);
        }
    }

    /// <summary>By hand: through zero at 3200, the points (2560, 100) and (11520, 445) give a slope of (2560 * 100 + 11520 * 445) / (2560² + 11520²) psi a count.</summary>
    [Fact]
    public void What_the_line_misses_the_points_by_is_the_residual()
    {
        ChannelFit fit = Fit((0, 3200), (100, 5760), (445, 14720))!;
        double slope = ((2560.0 * 100) + (11520.0 * 445)) / ((2560.0 * 2560) + (11520.0 * 11520));
        double[] expected = [0, (2560 * slope) - 100, (11520 * slope) - 445];
        Assert.All(fit.Residuals.Zip(expected), pair => Assert.Equal(pair.Second, pair.First / Psi, 0.001));
        Assert.Equal(expected.Max(Math.Abs), fit.LargestResidual / Psi, 0.001);
    }

    [Theory]
    [InlineData("two pressures at least", "0 450")]
    [InlineData("two pressures at least", "50 100 450")]
    [InlineData("go up from zero", "0 450 100")]
    [InlineData("go up from zero", "0 100 100")]
    [InlineData("outside the transducer's range", "0 100 520")]
    [InlineData("less than half", "0 50 240")]
    [InlineData("nearer to each other", "0 400 450")]
    public void Pressures_that_make_no_calibration_are_refused(string why, string psi) =>
        Assert.Contains(why, ChannelFit.WhyNot([.. psi.Split(' ').Select(one => double.Parse(one) * Psi)], Range), StringComparison.Ordinal);

    [Theory]
    [InlineData("did not rise", 3200, 14720, 5760)]
    [InlineData("did not rise", 3200, 3200, 3200)]
    [InlineData("118 % of the transducer's", 3200, 5400, 13000)]
    [InlineData("check the reference's unit", 3200, 3571, 4870)]
    public void Readings_that_make_no_calibration_are_refused(string why, double zero, double low, double high)
    {
        Assert.Null(ChannelFit.TryOf([new(0, zero), new(100 * Psi, low), new(450 * Psi, high)], Range, out string said));
        Assert.Contains(why, said, StringComparison.Ordinal);
    }

    private static ChannelFit? Fit(params (double Psi, double Counts)[] points) =>
        ChannelFit.TryOf([.. points.Select(point => new CalibrationPoint(point.Psi * Psi, point.Counts))], Range, out _);
}
