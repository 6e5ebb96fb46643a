using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Capture.Tests.Samples;

/// <summary>
/// Live zero of 4 to 20 mA: IEC 60381-1. Bands: NAMUR NE 43 (values from secondary sources): 3.8 to 20.5 mA measure, up to 3.6 and
/// from 21 mA the loop has failed.
/// </summary>
public class LoopCheckTests
{
    // 100 ohm on the +-4.096 V range of the converter: 125 uV, so 1.25 uA a count.
    private const double CountsPerMilliampere = 800;

    [Theory]
    [InlineData(0, LoopState.Open)]
    [InlineData(3.6, LoopState.Open)]
    [InlineData(3.7, LoopState.Saturated)]
    [InlineData(3.8, LoopState.Measuring)]
    [InlineData(4, LoopState.Measuring)]
    [InlineData(12, LoopState.Measuring)]
    [InlineData(20, LoopState.Measuring)]
    [InlineData(20.4, LoopState.Measuring)]
    [InlineData(20.5, LoopState.Saturated)]
    [InlineData(20.6, LoopState.Saturated)]
    [InlineData(21, LoopState.Shorted)]
    [InlineData(24, LoopState.Shorted)]
    public void A_current_is_a_pressure_only_inside_the_measuring_band(double milliampere, LoopState state)
    {
        LoopCheck check = new(new ChannelCalibration { Kind = ChannelKind.CurrentLoop });
        int counts = (int)(milliampere * CountsPerMilliampere);
        Assert.Equal(state == LoopState.Measuring ? counts : SampleSet.Missing, check.Pass(counts));
        Assert.Equal(state, check.State);
    }

    [Theory]
    [InlineData(3.8, -6.25)]
    [InlineData(4, 0)]
    [InlineData(8, 125)]
    [InlineData(12, 250)]
    [InlineData(16, 375)]
    [InlineData(20, 500)]
    [InlineData(20.5, 515.625)]
    public void Four_to_twenty_milliampere_span_the_transducer(double milliampere, double psi)
    {
        ChannelCalibration calibration = new() { Kind = ChannelKind.CurrentLoop, ZeroCounts = 3200, SpanCounts = 12800, SpanPascal = 3447379 };
        Assert.Equal(psi * 6894.757, calibration.PascalFromCounts((int)(milliampere * CountsPerMilliampere)), 280.0);
    }

    [Fact]
    public void A_recorded_pressure_has_no_bands()
    {
        LoopCheck check = new(new ChannelCalibration { Kind = ChannelKind.RecordedPressure });
        Assert.Equal(-500, check.Pass(-500));
        Assert.Equal(SampleSet.Missing, check.Pass(SampleSet.Missing));
    }
}
