using System;
using LoggerBox.Host.Traces;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Host.Tests.Traces;

public class ChannelRangeTests
{
    /// <summary>
    /// IEC 60381-1: 4 to 20 mA are 0 to 100 %, so percent = (mA - 4) / 16. The other currents are the bounds of NAMUR NE 43:
    /// measuring from 3.8 to 20.5 mA, failure at 3.6 mA and below and at 21.0 mA and above. Pressures of a 0 to 500 psi transducer.
    /// </summary>
    [Theory]
    [InlineData(3.6, -12.5)]
    [InlineData(3.8, -6.25)]
    [InlineData(4, 0)]
    [InlineData(8, 125)]
    [InlineData(12, 250)]
    [InlineData(16, 375)]
    [InlineData(20, 500)]
    [InlineData(20.5, 515.625)]
    [InlineData(21, 531.25)]
    public void Loop_current_scales_to_pressure(double milliampere, double psi)
    {
        ChannelCalibration calibration = ChannelRange.Parse("0..500psi").ToCalibration();
        int counts = (int)Math.Round(milliampere * ChannelRange.CountsPerMilliampere);
        Assert.Equal(ChannelKind.CurrentLoop, calibration.Kind);
        Assert.Equal(psi, calibration.PascalFromCounts(counts) / PressureUnit.Psi.InPascal(), 3);
    }

    [Theory]
    [InlineData("-1..9 bar", -100_000, 900_000)]
    [InlineData("1..5bar", 100_000, 500_000)]
    [InlineData(" 0 .. 34.5 kgfcm2", 0, 3_383_294)]
    [InlineData("0..3500kPa", 0, 3_500_000)]
    public void A_range_need_not_begin_at_zero(string text, int atFour, int atTwenty)
    {
        ChannelCalibration calibration = ChannelRange.Parse(text).ToCalibration();
        int tolerance = calibration.SpanPascal / 12800 + 1;
        Assert.InRange(calibration.PascalFromCounts(3200), atFour - tolerance, atFour + tolerance);
        Assert.InRange(calibration.PascalFromCounts(16000), atTwenty - tolerance, atTwenty + tolerance);
    }

    [Theory]
    [InlineData("")]
    [InlineData("500psi")]
    [InlineData("0..500")]
    [InlineData("0..500furlong")]
    [InlineData("..500psi")]
    [InlineData("0..psi")]
    [InlineData("a..bpsi")]
    [InlineData("nan..5psi")]
    [InlineData("500..0psi")]
    [InlineData("0..0psi")]
    [InlineData("0..1e9psi")]
    [InlineData("0..999999999psi")]
    [InlineData("0-500psi")]
    public void What_is_no_range_is_an_error_of_the_command_line(string text) =>
        Assert.True(Assert.Throws<UserErrorException>(() => ChannelRange.Parse(text)).Usage);
}
