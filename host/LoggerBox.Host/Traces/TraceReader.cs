using System;
using System.Collections.Generic;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Traces;

/// <summary>Reads a trace file (CSV). The first cell that is refused ends the reading: nothing is half imported.</summary>
public static class TraceReader
{
    /// <exception cref="UserErrorException">
    /// The file cannot be read or something in it is refused (file and line are named), or an option is missing or wrong (a usage error).
    /// </exception>
    /// <param name="progress">Told now and then how much of the file was read, and how much there is.</param>
    public static Trace Read(TraceSource source, Action<long, long>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(source);
        SourceLines lines = SourceLines.Open(source.Path);
        if (!lines.Next())
        {
            throw new UserErrorException($"{lines.FileName}, line 1: the file is empty; it needs a line of column names and rows.");
        }

        TraceHeader header = TraceHeader.Read(lines, source.Columns);
        List<string> notes = TraceOptions.Check(source, header, lines.FileName);
        var rows = new TraceRows(header, lines.AtMost);
        while (lines.Next())
        {
            rows.Add(lines);
            if (rows.Count % RowsBetweenWords == 0)
            {
                progress?.Invoke(lines.Length - lines.Left, lines.Length);
            }
        }

        if (rows.Count == 0)
        {
            throw lines.Refused("there are no rows after the column names; nothing was recorded.");
        }

        long[] times = rows.Microseconds;
        AddRateNote(times, notes);
        long[]? edges = source.PulsesPath is string pulses ? PulseFile.Read(pulses) : null;
        int[]? speeds = edges is null ? rows.SpeedTenths : PulseSpeeds.At(times, edges, source.PulsesPerRevolution!.Value);
        AddSpeedNote(speeds, notes);
        return new Trace
        {
            FileName = lines.FileName,
            Microseconds = times,
            SpeedTenths = speeds,
            Main = rows.Pressure(TraceQuantity.Main, source.RangeMain),
            Clutch = rows.Pressure(TraceQuantity.Clutch, source.RangeClutch),
            Converter = rows.Pressure(TraceQuantity.Converter, source.RangeConverter),
            Gears = rows.Gears,
            Steps = rows.Steps,
            OilTenthsCelsius = rows.OilTenthsCelsius,
            PulseEdgesMicroseconds = edges,
            PulsesPerRevolution = edges is null ? null : source.PulsesPerRevolution,
            Notes = notes,
        };
    }

    private const int RowsBetweenWords = 8192;

    private const int FastestStoredTenths = 2 * SampleBlock.SpeedMiddleTenths;

    /// <summary>A sample has 16 bits for tenths of rpm: what is faster is stored as missing, and the person must know why.</summary>
    private static void AddSpeedNote(int[]? speeds, List<string> notes)
    {
        int tooFast = speeds is null ? 0 : Array.FindAll(speeds, tenths => tenths > FastestStoredTenths).Length;
        if (tooFast > 0)
        {
            notes.Add($"{tooFast} readings of the speed are above 6553.4 rpm, which a stored sample cannot hold; they count as missing. Check the pulses per revolution of the recording.");
        }
    }

    private static void AddRateNote(long[] times, List<string> notes)
    {
        double seconds = (times[^1] - times[0]) / 1e6;
        double rate = seconds > 0 ? (times.Length - 1) / seconds : 0;
        if (times.Length > 1 && rate is < 10 or > 1000)
        {
            notes.Add(FormattableString.Invariant($"The trace has {rate:0.#} rows a second; holds and engagements are found reliably from 10 to 1000."));
        }
    }
}
