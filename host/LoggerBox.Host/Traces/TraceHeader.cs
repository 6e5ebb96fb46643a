using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Traces;

internal enum TraceQuantity
{
    Ignored,
    Time,
    Speed,
    Main,
    Clutch,
    Converter,
    Gear,
    Step,
    Oil,
}

internal enum TimeForm
{
    Seconds,
    Milliseconds,

    /// <summary>A time of day, or a date with one.</summary>
    Clock,
}

/// <param name="Unit">Of a pressure; null for a loop current and for everything else.</param>
internal sealed record TraceHeaderColumn(string Name, TraceQuantity Quantity, PressureUnit? Unit = null, TimeForm Time = TimeForm.Seconds);

/// <summary>The line of column names.</summary>
internal sealed class TraceHeader(IReadOnlyList<TraceHeaderColumn> columns)
{
    public IReadOnlyList<TraceHeaderColumn> Columns { get; } = columns;

    public TraceHeaderColumn? Find(TraceQuantity quantity) => Columns.FirstOrDefault(column => column.Quantity == quantity);

    /// <param name="map">What columns of other names are; null where the file's own names are all that there is.</param>
    public static TraceHeader Read(scoped in SourceLines lines, ColumnMap? map = null)
    {
        if (!lines.Current.Contains((byte)',') && lines.Current.IndexOfAny((byte)';', (byte)'\t') >= 0)
        {
            throw lines.Refused("the columns are not separated by commas; export the recording with commas between columns and a point in numbers.");
        }

        var columns = new List<TraceHeaderColumn>();
        var cells = new CsvCells(lines.Current);
        while (cells.Next())
        {
            TraceHeaderColumn column = Column(Excerpt.Of(cells.Current), map, lines);
            if (column.Quantity != TraceQuantity.Ignored && columns.Find(other => other.Quantity == column.Quantity) is TraceHeaderColumn first)
            {
                throw lines.Refused(first.Name == column.Name
                    ? $"the column {column.Name} is there twice; leave one out."
                    : $"the columns {first.Name} and {column.Name} are the same reading twice; leave one out.");
            }

            columns.Add(column);
        }

        if (cells.BrokenQuote)
        {
            throw lines.Refused("a quote among the column names is opened and not closed, or stands inside a name.");
        }

        if (map?.NotAmong(columns) is string missing)
        {
            throw lines.Refused($"there is no column \"{missing}\", which was said to be {map.TargetOf(missing)!.Name}; the columns are {string.Join(", ", columns.Select(column => $"\"{column.Name}\""))}.");
        }

        var header = new TraceHeader(columns);
        return header.Find(TraceQuantity.Time) is not null
            ? header
            : throw lines.Refused("there is no column time_s; the first line must name the columns, time_s (seconds) among them, or --map time_s=NAME says which it is.");
    }

    /// <summary>What was said of a column goes before its own name: then a name that is like a known one stands for nothing.</summary>
    private static TraceHeaderColumn Column(string name, ColumnMap? map, scoped in SourceLines lines)
    {
        if (map?.TargetOf(name) is TraceHeaderColumn said)
        {
            return said with { Name = name };
        }

        if (TraceNames.Of(name) is TraceHeaderColumn own && map?.Gives(own.Quantity) != true)
        {
            return own;
        }

        return TraceNames.Like(name) is var (quantity, advice) && map?.Gives(quantity) != true
            ? throw lines.Refused($"the column \"{name}\" {advice}")
            : new TraceHeaderColumn(name, TraceQuantity.Ignored);
    }
}
