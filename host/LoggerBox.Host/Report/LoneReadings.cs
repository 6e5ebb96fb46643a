using System;
using System.Linq;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Report;

/// <summary>
/// Tells single wild readings of one channel (ignition bursts, a lost word on a bus) from the others: one that is far from the median of the
/// five around it, beside what is usual just then. No logger takes such a reading into a value, so no line on paper goes through it. Two late.
/// </summary>
internal sealed class LoneReadings(int floor)
{
    private const int Width = 5;
    private const int Middle = Width / 2;

    // Of the mean distance from the median of five, which is about half a standard deviation.
    private const double DeviationsAllowed = 8;
    private const double Smoothing = 32;

    private const int SpeedFloorTenths = 250;
    private const double PressureFloorPascal = 15_000;

    private readonly int[] values = [.. Enumerable.Repeat(SampleSet.Missing, Width)];
    private readonly long[] moments = new long[Width];
    private double usual;

    /// <summary>With the distance from its neighbours that is never wild: 25 rpm, 15 kPa.</summary>
    public static LoneReadings Of(int channel, SessionHeader header)
    {
        if (channel == Channel.Speed)
        {
            return new LoneReadings(SpeedFloorTenths);
        }

        ChannelCalibration calibration = header.Pressures[channel - 1];
        return new LoneReadings((int)Math.Clamp(PressureFloorPascal * calibration.SpanCounts / Math.Max(1, calibration.SpanPascal), 3, short.MaxValue));
    }

    /// <summary>Takes a reading and gives the one from two readings ago; Missing where there was none.</summary>
    public (long Microseconds, int Raw, bool IsLone) Pass(long microseconds, int raw)
    {
        Array.Copy(values, 1, values, 0, Width - 1);
        Array.Copy(moments, 1, moments, 0, Width - 1);
        (values[^1], moments[^1]) = (raw, microseconds);
        int middle = values[Middle];
        if (middle == SampleSet.Missing)
        {
            return (moments[Middle], middle, false);
        }

        double distance = Math.Abs(middle - Median());
        double most = floor + (DeviationsAllowed * usual);
        usual += (Math.Min(distance, most) - usual) / Smoothing;
        return (moments[Middle], middle, distance > most);
    }

    private double Median()
    {
        Span<int> sorted = stackalloc int[Width];
        int count = 0;
        foreach (int value in values)
        {
            if (value != SampleSet.Missing)
            {
                sorted[count++] = value;
            }
        }

        sorted[..count].Sort();
        return (sorted[(count - 1) / 2] + sorted[count / 2]) / 2.0;
    }
}
