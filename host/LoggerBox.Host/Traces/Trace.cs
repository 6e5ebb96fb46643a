using System.Collections.Generic;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Traces;

/// <summary>A trace file as read: one array per column that is present, all of the same length; null for a column that is missing.</summary>
public sealed class Trace
{
    public required string FileName { get; init; }

    /// <summary>Time of each row since the trace's zero; strictly increasing.</summary>
    public required long[] Microseconds { get; init; }

    /// <summary>Tenths of rpm, <see cref="SampleSet.Missing"/> for an empty cell; from the pulses where they are given.</summary>
    public int[]? SpeedTenths { get; init; }

    public PressureColumn? Main { get; init; }

    public PressureColumn? Clutch { get; init; }

    public PressureColumn? Converter { get; init; }

    public Gear[]? Gears { get; init; }

    public Step[]? Steps { get; init; }

    /// <summary>Tenths of a degree Celsius, <see cref="SampleSet.Missing"/> for an empty cell.</summary>
    public int[]? OilTenthsCelsius { get; init; }

    /// <summary>Pickup edges on the rows' time base, strictly increasing; null without a pulse file.</summary>
    public long[]? PulseEdgesMicroseconds { get; init; }

    public double? PulsesPerRevolution { get; init; }

    /// <summary>What was ignored or looked odd; whole sentences for the person who asked.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    public int Count => Microseconds.Length;

    /// <summary>Main, clutch, converter.</summary>
    public IReadOnlyList<PressureColumn?> Pressures => [Main, Clutch, Converter];
}

/// <summary>One pressure column: gauge pressure in pascal, or loop current in milliampere with the transducer's range.</summary>
public sealed class PressureColumn(PressureUnit? printedUnit, ChannelRange? range, double[] values, bool[] present)
{
    /// <summary>Null for a loop current.</summary>
    public PressureUnit? PrintedUnit { get; } = printedUnit;

    /// <summary>Null for a pressure.</summary>
    public ChannelRange? Range { get; } = range;

    public bool IsLoopCurrent => PrintedUnit is null;

    /// <returns>False for an empty cell.</returns>
    public bool TryGet(int row, out double value)
    {
        value = values[row];
        return present[row];
    }
}
