using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Report;

/// <summary>
/// One channel thinned to what paper can show: per column the lowest and highest value; a gap stays a gap. Single wild readings are no part of
/// the line: when they came is told beside it.
/// </summary>
internal sealed class TraceCurve
{
    private const int Columns = 640;

    /// <summary>Seconds without a reading that show as a hole; shorter ones are single missing cells.</summary>
    private const double ShortestGap = 0.5;

    private TraceCurve(double from, double to, List<(double Second, double Low, double High)> points, List<double> lone)
    {
        From = from;
        To = to;
        Points = points;
        Lone = lone;
        Gap = Math.Max(ShortestGap, 3 * (to - from) / Columns);
    }

    public double From { get; }

    public double To { get; }

    /// <summary>Two points further apart than this, in seconds, are not joined.</summary>
    public double Gap { get; }

    public IReadOnlyList<(double Second, double Low, double High)> Points { get; }

    /// <summary>Seconds at which a reading was left out because it stood alone, one a column at the most.</summary>
    public IReadOnlyList<double> Lone { get; }

    public bool IsEmpty => Points.Count == 0;

    /// <summary>The whole recording, a curve a channel: the sample sets are gone through once.</summary>
    public static TraceCurve[] Of(ReportRecording recording, PressureUnit unit)
    {
        IReadOnlyList<RecordedSample> samples = recording.Session.Samples;
        return Of(recording, unit, samples, samples[0].Microseconds, samples[^1].Microseconds);
    }

    /// <summary>A stretch of it, seconds from the recording's start.</summary>
    public static TraceCurve[] Of(ReportRecording recording, PressureUnit unit, double first, double last)
    {
        long zero = recording.Session.Header.StartMicroseconds;
        long from = zero + (long)Math.Ceiling(first * 1e6);
        long to = zero + (long)Math.Floor(last * 1e6);
        return Of(recording, unit, recording.Session.SamplesBetween(from, to), from, to);
    }

    private static TraceCurve[] Of(ReportRecording recording, PressureUnit unit, IEnumerable<RecordedSample> samples, long from, long to)
    {
        SessionHeader header = recording.Session.Header;
        long span = Math.Max(to - from, 1);
        RawColumn[][] columns = [.. Enumerable.Range(0, Channel.Count).Select(_ => new RawColumn[Columns])];
        LoneReadings[] filters = [.. Enumerable.Range(0, Channel.Count).Select(channel => LoneReadings.Of(channel, header))];
        foreach (RecordedSample sample in samples)
        {
            for (int channel = 0; channel < columns.Length; channel++)
            {
                Put(filters[channel].Pass(sample.Microseconds, sample.Of(channel)), columns[channel], from, span);
            }
        }

        for (int channel = 0; channel < columns.Length; channel++)
        {
            Put(filters[channel].Pass(to, SampleSet.Missing), columns[channel], from, span);
            Put(filters[channel].Pass(to, SampleSet.Missing), columns[channel], from, span);
        }

        double Second(long microseconds) => (microseconds - header.StartMicroseconds) / 1e6;
        return [.. columns.Select((raw, channel) => new TraceCurve(
            Second(from), Second(from + span), Thinned(raw, channel, header, unit), [.. raw.Where(column => column.HasLone).Select(column => Second(column.LoneMicroseconds))]))];
    }

    private static void Put((long Microseconds, int Raw, bool IsLone) reading, RawColumn[] columns, long from, long span)
    {
        if (reading.Raw != SampleSet.Missing)
        {
            columns[(int)Math.Clamp((reading.Microseconds - from) * (double)Columns / span, 0, Columns - 1)].Add(reading);
        }
    }

    private static List<(double Second, double Low, double High)> Thinned(RawColumn[] columns, int channel, SessionHeader header, PressureUnit unit)
    {
        List<(double Second, double Low, double High)> points = [];
        if (channel != Channel.Speed && header.Pressures[channel - 1].Kind == ChannelKind.None)
        {
            return points;
        }

        foreach (RawColumn column in columns.Where(column => column.Has))
        {
            double one = ValueOf(column.Low, header, channel, unit);
            double other = ValueOf(column.High, header, channel, unit);
            points.Add(((column.FirstMicroseconds - header.StartMicroseconds) / 1e6, Math.Min(one, other), Math.Max(one, other)));
        }

        return points;
    }

    private static double ValueOf(int raw, SessionHeader header, int channel, PressureUnit unit) =>
        channel == Channel.Speed ? raw / 10.0 : header.Pressures[channel - 1].PascalFromCounts(raw) / unit.InPascal();

    /// <summary>What one column of the picture holds, in the logger's own units.</summary>
    private struct RawColumn
    {
        public long FirstMicroseconds;
        public int Low;
        public int High;
        public bool Has;

        public long LoneMicroseconds;
        public bool HasLone;

        public void Add((long Microseconds, int Raw, bool IsLone) reading)
        {
            if (reading.IsLone)
            {
                LoneMicroseconds = HasLone ? LoneMicroseconds : reading.Microseconds;
                HasLone = true;
                return;
            }

            FirstMicroseconds = Has ? FirstMicroseconds : reading.Microseconds;
            Low = Has ? Math.Min(Low, reading.Raw) : reading.Raw;
            High = Has ? Math.Max(High, reading.Raw) : reading.Raw;
            Has = true;
        }
    }
}
