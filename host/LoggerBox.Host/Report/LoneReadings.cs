using System;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Report;

/// <summary>
/// Tells single wild readings of one channel (ignition bursts, a lost word on a bus) from the others: one that is far from the median of the
/// five around it, beside what is usual just then. No logger takes such a reading into a value, so no line on paper goes through it. Two late.
/// </summary>
internal sealed class LoneReadings(int floor)
{
    // Of the mean distance from the median of five, which is about half a standard deviation.
    private const double DeviationsAllowed = 8;
    private const double Smoothing = 32;

    private const int SpeedFloorTenths = 250;
    private const double PressureFloorPascal = 15_000;

    private int oldest = SampleSet.Missing;
    private int older = SampleSet.Missing;
    private int middle = SampleSet.Missing;
    private int newer = SampleSet.Missing;
    private int newest = SampleSet.Missing;
    private long middleMoment;
    private long newerMoment;
    private long newestMoment;
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
        (oldest, older, middle, newer, newest) = (older, middle, newer, newest, raw);
        (middleMoment, newerMoment, newestMoment) = (newerMoment, newestMoment, microseconds);
        if (middle == SampleSet.Missing)
        {
            return (middleMoment, middle, false);
        }

        double distance = Math.Abs(middle - Median());
        double most = floor + (DeviationsAllowed * usual);
        usual += (Math.Min(distance, most) - usual) / Smoothing;
        return (middleMoment, middle, distance > most);
    }

    private double Median()
    {
        bool isWhole = oldest != SampleSet.Missing && older != SampleSet.Missing && newer != SampleSet.Missing && newest != SampleSet.Missing;
        return isWhole ? MedianOfFive() : MedianOfThoseThatAre();
    }

    // Almost always, millions of times a report: of two pairs the greater of the lesser and the lesser of the greater lie around the median, or
    // are it; it is the middle one of those two and the fifth.
    private int MedianOfFive()
    {
        int low = Math.Max(Math.Min(oldest, older), Math.Min(newer, newest));
        int high = Math.Min(Math.Max(oldest, older), Math.Max(newer, newest));
        return Math.Max(Math.Min(low, high), Math.Min(Math.Max(low, high), middle));
    }

    private double MedianOfThoseThatAre()
    {
        Span<int> sorted = stackalloc int[5];
        int count = 0;
        foreach (int value in (ReadOnlySpan<int>)[oldest, older, middle, newer, newest])
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
