using LoggerBox.Host.Traces;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Host.Tests.Traces;

public class TraceCountsTests
{
    /// <summary>100 ohm on a converter of 125 microvolt a count (the data sheet of ADS1115, +-4.096 V): 4, 12 and 20 mA are 3200, 9600 and 16000.</summary>
    [Fact]
    public void A_loop_current_becomes_the_loggers_own_counts()
    {
        Trace trace = TraceText.Read("time_s,main_mA\n0,4\n1,12\n2,20\n3,\n", source => source with { RangeMain = ChannelRange.Parse("0..500psi") });
        TraceCounts counts = TraceCounts.From(trace);
        Assert.Equal([3200, 9600, 16_000, SampleSet.Missing], counts.PressureCounts[0]);
        Assert.Equal(ChannelKind.CurrentLoop, counts.Calibrations[0].Kind);
        Assert.Equal(3_447_379, counts.Calibrations[0].SpanPascal);
    }

    [Theory]
    [InlineData("300", 10)]
    [InlineData("301", 20)]
    [InlineData("-301", 20)]
    [InlineData("1000", 50)]
    [InlineData("39999", 2000)]
    [InlineData("0", 1)]
    public void A_recorded_pressure_gets_the_finest_round_step_that_fits(string kilopascal, int step)
    {
        TraceCounts counts = TraceCounts.From(TraceText.Read($"time_s,clutch_kPa\n0,{kilopascal}\n1,\n2,0\n"));
        ChannelCalibration calibration = counts.Calibrations[1];
        Assert.Equal((ChannelKind.RecordedPressure, step), (calibration.Kind, calibration.SpanPascal));
        Assert.Equal([SampleSet.Missing, 0], counts.PressureCounts[1][1..]);
        Assert.InRange(calibration.PascalFromCounts(counts.PressureCounts[1][0]) - int.Parse(kilopascal, System.Globalization.CultureInfo.InvariantCulture) * 1000, -step / 2, step / 2);
    }

    [Fact]
    public void A_missing_column_is_missing_throughout()
    {
        TraceCounts counts = TraceCounts.From(TraceText.Read("time_s\n0\n1\n"));
        Assert.Equal([SampleSet.Missing, SampleSet.Missing], counts.SpeedTenths);
        Assert.All(counts.PressureCounts, column => Assert.Equal([SampleSet.Missing, SampleSet.Missing], column));
        Assert.All(counts.Calibrations, calibration => Assert.Equal(ChannelKind.None, calibration.Kind));
        Assert.False(counts.HasGears);
    }
}
