using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Report;

/// <summary>One channel thinned to what paper can show: per column the lowest and highest value, so that no spike is lost; a gap stays a gap.</summary>
internal sealed class TraceCurve
{
    private const int Columns = 640;

    /// <summary>Seconds without a reading that show as a hole; shorter ones are single missing cells.</summary>
    private const double ShortestGap = 0.5;

    private TraceCurve(double from, double to, List<(double Second, double Low, double High)> points)
    {
        From = from;
        To = to;
        Points = points;
        Gap = Math.Max(ShortestGap, 3 * (to - from) / Columns);
    }

    public double From { get; }

    public double To { get; }

    /// <summary>Two points further apart than this, in seconds, are not joined.</summary>
    public double Gap { get; }

    public IReadOnlyList<(double Second, double Low, double High)> Points { get; }

    public bool IsEmpty => Points.Count == 0;

    public static TraceCurve Of(ReportRecording recording, int channel, PressureUnit unit)
    {
        IReadOnlyList<RecordedSample> samples = recording.Session.Samples;
        long zero = recording.Session.Header.StartMicroseconds;
        return Of(recording, channel, unit, (samples[0].Microseconds - zero) / 1e6, (samples[^1].Microseconds - zero) / 1e6);
    }

    /// <summary>A stretch of it, seconds from the recording's start.</summary>
    public static TraceCurve Of(ReportRecording recording, int channel, PressureUnit unit, double first, double last)
    {
        long zero = recording.Session.Header.StartMicroseconds;
        double span = Math.Max(last - first, 1e-6);
        var columns = new (double Second, double Low, double High)?[Columns];
        foreach (RecordedSample sample in recording.Session.Samples)
        {
            double second = (sample.Microseconds - zero) / 1e6;
            if (second < first || second > last || ValueOf(sample, recording.Session.Header, channel, unit) is not double value)
            {
                continue;
            }

            int column = Math.Min(Columns - 1, (int)((second - first) / span * Columns));
            columns[column] = columns[column] is (double at, double low, double high)
                ? (at, Math.Min(low, value), Math.Max(high, value))
                : (second, value, value);
        }

        return new TraceCurve(first, first + span, [.. columns.OfType<(double, double, double)>()]);
    }

    private static double? ValueOf(RecordedSample sample, SessionHeader header, int channel, PressureUnit unit)
    {
        int raw = channel switch
        {
            Channel.Speed => sample.SpeedTenths,
            Channel.Main => sample.MainCounts,
            Channel.Clutch => sample.ClutchCounts,
            _ => sample.ConverterCounts,
        };
        if (raw == SampleSet.Missing)
        {
            return null;
        }

        if (channel == Channel.Speed)
        {
            return raw / 10.0;
        }

        ChannelCalibration calibration = header.Pressures[channel - 1];
        return calibration.Kind == ChannelKind.None ? null : calibration.PascalFromCounts(raw) / unit.InPascal();
    }
}
