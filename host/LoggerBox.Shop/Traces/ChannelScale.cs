using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Shop.Traces;

/// <summary>From a channel's own units to those on the page. Steadily rising or falling, so that the extremes of counts are those of readings.</summary>
internal readonly record struct ChannelScale(ChannelCalibration? Calibration, double InPascal)
{
    public static ChannelScale Of(SessionHeader header, int channel, PressureUnit unit) =>
        channel == Channel.Speed ? new ChannelScale(null, 0) : new ChannelScale(header.Pressures[channel - 1], unit.InPascal());

    public bool IsConnected => Calibration is null || Calibration.Kind != ChannelKind.None;

    public float Value(double raw) => Calibration is null
        ? (float)(raw / 10)
        : (float)((raw - Calibration.ZeroCounts) * Calibration.SpanPascal / Calibration.SpanCounts / InPascal);
}
