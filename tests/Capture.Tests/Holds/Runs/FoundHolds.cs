using System;
using System.Collections.Generic;
using LoggerBox.Capture.Holds;
using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Tests.Holds.Runs;

/// <summary>One channel of readings through the logger's own spike filter, bins and hold finder. Times in seconds, values in the channel's unit.</summary>
internal sealed record FoundHold(double Start, double End, double Settled, double StandardError, int DegreesOfFreedom, double Deviation, double Slope, bool Drifts)
{
    public double Length => End - Start;

    public double Overlap(double from, double to) => Math.Min(End, to) - Math.Max(Start, from);
}

internal static class FoundHolds
{
    /// <summary>100 pascal a count: pressures in kPa are tens of counts.</summary>
    public const int CountsPerKilopascal = 10;

    /// <summary>Evenly timed readings, one hold finder from the first to the last; NaN is a missing reading.</summary>
    public static List<FoundHold> In(int channel, ReadOnlySpan<double> values, double perSecond)
    {
        double[] times = new double[values.Length];
        for (int i = 0; i < times.Length; i++)
        {
            times[i] = i / perSecond;
        }

        return In(channel, times, values);
    }

    public static List<FoundHold> In(int channel, ReadOnlySpan<double> seconds, ReadOnlySpan<double> values)
    {
        SessionHeader header = Header();
        CleanSamples clean = new(header);
        BinAverager bins = new();
        HoldFinder finder = new(header);
        SampleSet sample = new();
        List<FoundHold> found = [];
        for (int i = 0; i < values.Length; i++)
        {
            sample.Microseconds = (long)Math.Round(seconds[i] * 1e6);
            for (int c = 0; c < Channel.Count; c++)
            {
                sample.Values[c] = c == channel && !double.IsNaN(values[i]) ? (int)Math.Round(values[i]) : SampleSet.Missing;
            }

            if (clean.Add(sample) && bins.Add(clean.Latest))
            {
                finder.Take(bins.Completed);
                finder.Look();
                Measure(finder, channel, found);
            }
        }

        finder.Break(0);
        Measure(finder, channel, found);
        return found;
    }

    private static void Measure(HoldFinder finder, int channel, List<FoundHold> found)
    {
        while (finder.Advance())
        {
        }

        if (finder.IsMeasured)
        {
            finder.Take();
            found.Add(Of(finder.Ended, channel));
        }
    }

    private static FoundHold Of(HoldRecord record, int channel)
    {
        HoldReading reading = record.Readings[channel];
        double start = record.StartMicroseconds / 1e6;
        return new(
            start,
            start + (record.DurationMilliseconds / 1e3),
            reading.SettledHundredths / 100.0,
            reading.StandardErrorThousandths / 1000.0,
            reading.DegreesOfFreedom,
            reading.DeviationHundredths / 100.0,
            reading.SlopeHundredthsPerSecond / 100.0,
            record.Drifts(channel));
    }

    public static SessionHeader Header()
    {
        SessionHeader header = new() { SampleIntervalMicroseconds = 20000 };
        for (int i = 0; i < header.Pressures.Length; i++)
        {
            header.Pressures[i] = new ChannelCalibration { Kind = ChannelKind.RecordedPressure, SpanCounts = CountsPerKilopascal, SpanPascal = 1000 };
        }

        return header;
    }
}
