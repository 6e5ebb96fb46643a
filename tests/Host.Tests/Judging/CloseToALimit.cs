using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Judging.Checking;
using LoggerBox.Host.Judging.Measuring;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>Three states near a limit after ISO 14253-1 and the examples of JCGM 106:2012 (numbers from memory), expanded uncertainty k = 2.</summary>
public sealed class CloseToALimit
{
    // At least 95 psi with u = 0.97 psi.
    [Theory]
    [InlineData(92, Verdict.Low)]
    [InlineData(93, Verdict.Low)]
    [InlineData(93.1, Verdict.CloseLow)]
    [InlineData(95, Verdict.CloseLow)]
    [InlineData(96.9, Verdict.CloseLow)]
    [InlineData(97, Verdict.In)]
    public void At_least_95_psi(double value, Verdict expected) =>
        Assert.Equal(expected, Judge(value, 0.97, new Limit(95, null, null, 1)));

    [Theory]
    [InlineData(null, -5.40, -5.47, 0.05, Verdict.CloseHigh)] // Zener voltage, 7.3.3
    [InlineData(490.0, null, 509.7, 8.6, Verdict.In)] // breaking strength
    [InlineData(12.5, 16.3, 13.6, 1.8, Verdict.CloseLow)] // oil viscosity
    public void Examples_of_jcgm_106(double? min, double? max, double value, double standard, Verdict expected) =>
        Assert.Equal(expected, Judge(value, standard, new Limit(min, max, null, 1)));

    [Theory]
    [InlineData(85, Verdict.CloseHigh)]
    [InlineData(28, Verdict.CloseLow)]
    [InlineData(28.1, Verdict.In)]
    [InlineData(27.9, Verdict.Low)]
    public void Exactly_on_the_limit_is_close_even_without_uncertainty(double value, Verdict expected) =>
        Assert.Equal(expected, Judge(value, 0, new Limit(28, 85, null, 1)));

    [Fact]
    public void Nothing_read_is_not_measured_and_a_spoiled_reading_is_void()
    {
        var limit = new Limit(28, 85, null, 1);
        Assert.Equal(Verdict.NotMeasured, LimitCheck.Of("idle-N", "main", null, "psi", limit).Verdict);
        Assert.Equal(Verdict.Void, LimitCheck.Of("idle-N", "main", new Measured(10, new UncertaintyBudget()), "psi", limit, isVoid: true).Verdict);
    }

    private static Verdict Judge(double value, double standard, Limit limit) =>
        LimitCheck.Judge(new Measured(value, new UncertaintyBudget().Add(standard)), limit);
}
