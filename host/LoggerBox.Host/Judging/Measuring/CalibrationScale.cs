using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>Counts to pascal with the fractions that hold readings carry.</summary>
public static class CalibrationScale
{
    public static double PascalPerCount(this ChannelCalibration calibration) =>
        calibration.SpanCounts == 0 ? 0 : (double)calibration.SpanPascal / calibration.SpanCounts;

    public static double PascalFromHundredths(this ChannelCalibration calibration, int hundredths) =>
        ((hundredths / 100.0) - calibration.ZeroCounts) * calibration.PascalPerCount();
}
