using System;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Traces;

/// <summary>A trace in the logger's own integers, as a board gives them to the capture engine. A missing column is all <see cref="SampleSet.Missing"/>.</summary>
public sealed class TraceCounts
{
    /// <summary>Largest count that a stored reading has room for, with some to spare.</summary>
    private const int LargestCounts = 30000;

    public required long[] Microseconds { get; init; }

    /// <summary>Tenths of rpm as recorded; can exceed what a sample has room for (6553.4 rpm) where the pickup's scale was wrong.</summary>
    public required int[] SpeedTenths { get; init; }

    /// <summary>Main, clutch, converter: counts by row.</summary>
    public required int[][] PressureCounts { get; init; }

    /// <summary>Main, clutch, converter; kind None for a missing column.</summary>
    public required ChannelCalibration[] Calibrations { get; init; }

    public required Gear[] Gears { get; init; }

    public required Step[] Steps { get; init; }

    public required int[] OilTenthsCelsius { get; init; }

    public required bool HasGears { get; init; }

    public static TraceCounts From(Trace trace)
    {
        ArgumentNullException.ThrowIfNull(trace);
        int[][] counts = new int[3][];
        var calibrations = new ChannelCalibration[3];
        for (int i = 0; i < counts.Length; i++)
        {
            (counts[i], calibrations[i]) = Channel(trace.Pressures[i], trace.Count);
        }

        return new TraceCounts
        {
            Microseconds = trace.Microseconds,
            SpeedTenths = trace.SpeedTenths ?? AllMissing(trace.Count),
            PressureCounts = counts,
            Calibrations = calibrations,
            Gears = trace.Gears ?? new Gear[trace.Count],
            Steps = trace.Steps ?? new Step[trace.Count],
            OilTenthsCelsius = trace.OilTenthsCelsius ?? AllMissing(trace.Count),
            HasGears = trace.Gears is not null,
        };
    }

    private static (int[] Counts, ChannelCalibration Calibration) Channel(PressureColumn? column, int count)
    {
        if (column is null)
        {
            return (AllMissing(count), new ChannelCalibration());
        }

        double step = column.IsLoopCurrent ? 0 : StepPascal(column, count);
        ChannelCalibration calibration = column.IsLoopCurrent
            ? column.Range!.ToCalibration()
            : new ChannelCalibration { Kind = ChannelKind.RecordedPressure, SpanCounts = 1, SpanPascal = (int)step };
        int[] counts = new int[count];
        for (int row = 0; row < count; row++)
        {
            counts[row] = !column.TryGet(row, out double value) ? SampleSet.Missing
                : (int)Math.Round(column.IsLoopCurrent ? value * ChannelRange.CountsPerMilliampere : value / step);
        }

        return (counts, calibration);
    }

    /// <summary>The smallest of 1, 2, 5, 10, ... pascal at which the column's largest value still fits.</summary>
    private static double StepPascal(PressureColumn column, int count)
    {
        double largest = 0;
        for (int row = 0; row < count; row++)
        {
            if (column.TryGet(row, out double pascal))
            {
                largest = Math.Max(largest, Math.Abs(pascal));
            }
        }

        for (double decade = 1; ; decade *= 10)
        {
            foreach (double step in (ReadOnlySpan<double>)[decade, 2 * decade, 5 * decade])
            {
                if (largest <= step * LargestCounts)
                {
                    return step;
                }
            }
        }
    }

    private static int[] AllMissing(int count)
    {
        int[] column = new int[count];
        Array.Fill(column, SampleSet.Missing);
        return column;
    }
}
