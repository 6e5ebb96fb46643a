using System;
using System.Buffers.Binary;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Shop.Traces;

/// <summary>
/// What one picture of a stretch needs: columns, each with its time and per channel the lowest and highest reading. Where the stretch holds few
/// samples each is a column of its own, with its own time.
/// </summary>
internal sealed class TraceWindow
{
    public const int MostColumns = 8192;

    private readonly Extremes[][] columns;
    private readonly double[] seconds;

    private TraceWindow(double[] seconds, Extremes[][] columns)
    {
        this.seconds = seconds;
        this.columns = columns;
    }

    public int Columns => seconds.Length;

    /// <summary>Since the recording's start: a column's middle, or its only sample's time.</summary>
    public double Second(int column) => seconds[column];

    public Extremes At(int channel, int column) => columns[channel][column];

    /// <param name="zero">The recording's start; the stretch is counted from it, in seconds.</param>
    /// <param name="most">Columns; the stretch gets at least half as many where it has as many samples.</param>
    public static TraceWindow Of(Pyramid pyramid, long zero, double from, double to, int most)
    {
        long first = Math.Max(pyramid.Start, zero + Microseconds(from));
        long last = Math.Min(pyramid.End, zero + Microseconds(to));
        if (pyramid.SampleCount == 0 || last < first)
        {
            return new TraceWindow([], [[], [], [], []]);
        }

        int begin = pyramid.IndexAt(first);
        int end = pyramid.IndexAt(last + 1);
        if (end - begin <= most)
        {
            return Each(pyramid, zero, begin, end);
        }

        // Columns stand on a grid of their own length, so that a picture that is pushed aside does not flicker.
        long length = pyramid.CellMicroseconds;
        int level = 0;
        while ((last - first) / length + 2 > most)
        {
            length *= 2;
            level++;
        }

        while (level == 0 && length > 1 && (last - first) / (length / 2) + 2 <= most)
        {
            length /= 2;
        }

        return length >= pyramid.CellMicroseconds
            ? OfCells(pyramid, zero, level, first, last)
            : OfSamples(pyramid, zero, length, first, last);
    }

    /// <summary>Little-endian: the count of columns (int32, and four bytes of nothing); their times (float64); per channel the lows, the highs, the means (float32, NaN where there is none).</summary>
    public byte[] Bytes(SessionHeader header, PressureUnit unit)
    {
        byte[] bytes = new byte[8 + seconds.Length * (8 + Channel.Count * 3 * sizeof(float))];
        BinaryPrimitives.WriteInt32LittleEndian(bytes, seconds.Length);
        int at = 8;
        foreach (double second in seconds)
        {
            BinaryPrimitives.WriteDoubleLittleEndian(bytes.AsSpan(at), second);
            at += 8;
        }

        for (int channel = 0; channel < Channel.Count; channel++)
        {
            ChannelScale scale = ChannelScale.Of(header, channel, unit);
            // A channel may be wired so that more current is less pressure.
            Write(bytes, ref at, columns[channel], scale, cell => Math.Min(scale.Value(cell.Low), scale.Value(cell.High)));
            Write(bytes, ref at, columns[channel], scale, cell => Math.Max(scale.Value(cell.Low), scale.Value(cell.High)));
            Write(bytes, ref at, columns[channel], scale, cell => scale.Value(cell.Mean));
        }

        return bytes;
    }

    private static void Write(byte[] bytes, ref int at, Extremes[] column, ChannelScale scale, Func<Extremes, float> value)
    {
        foreach (Extremes cell in column)
        {
            BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(at), cell.IsNone || !scale.IsConnected ? float.NaN : value(cell));
            at += sizeof(float);
        }
    }

    private static TraceWindow Each(Pyramid pyramid, long zero, int begin, int end)
    {
        var window = Blank(end - begin);
        for (int i = begin; i < end; i++)
        {
            RecordedSample sample = pyramid.Sample(i);
            window.seconds[i - begin] = (sample.Microseconds - zero) / 1e6;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                window.columns[channel][i - begin] = Extremes.Of(sample.Of(channel));
            }
        }

        return window;
    }

    private static TraceWindow OfCells(Pyramid pyramid, long zero, int level, long first, long last)
    {
        long length = pyramid.CellLength(level);
        int begin = (int)((first - pyramid.Start) / length);
        int end = Math.Min(pyramid.Cells(level) - 1, (int)((last - pyramid.Start) / length));
        var window = Grid(pyramid, zero, length, begin, end);
        for (int channel = 0; channel < Channel.Count; channel++)
        {
            for (int cell = begin; cell <= end; cell++)
            {
                window.columns[channel][cell - begin] = pyramid.Cell(level, channel, cell);
            }
        }

        return window;
    }

    private static TraceWindow OfSamples(Pyramid pyramid, long zero, long length, long first, long last)
    {
        int begin = (int)((first - pyramid.Start) / length);
        int end = (int)((last - pyramid.Start) / length);
        var window = Grid(pyramid, zero, length, begin, end);
        for (int i = pyramid.IndexAt(pyramid.Start + begin * length); i < pyramid.SampleCount && pyramid.Sample(i).Microseconds < pyramid.Start + (end + 1) * length; i++)
        {
            RecordedSample sample = pyramid.Sample(i);
            int column = (int)((sample.Microseconds - pyramid.Start) / length) - begin;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                window.columns[channel][column] = window.columns[channel][column].With(Extremes.Of(sample.Of(channel)));
            }
        }

        return window;
    }

    private static TraceWindow Grid(Pyramid pyramid, long zero, long length, int begin, int end)
    {
        var window = Blank(end - begin + 1);
        for (int i = 0; i < window.seconds.Length; i++)
        {
            window.seconds[i] = (pyramid.Start - zero + (begin + i) * length + length / 2) / 1e6;
        }

        return window;
    }

    private static TraceWindow Blank(int count)
    {
        var columns = new Extremes[Channel.Count][];
        for (int channel = 0; channel < Channel.Count; channel++)
        {
            columns[channel] = new Extremes[count];
        }

        return new TraceWindow(new double[count], columns);
    }

    // Whatever an address says: no number that a time cannot hold.
    private static long Microseconds(double seconds) => (long)(Math.Clamp(seconds, -1e12, 1e12) * 1e6);
}
