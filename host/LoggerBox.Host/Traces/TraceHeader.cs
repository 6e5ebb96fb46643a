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

/// <param name="Unit">Of a pressure; null for a loop current and for everything else.</param>
internal sealed record TraceHeaderColumn(string Name, TraceQuantity Quantity, PressureUnit? Unit = null);

/// <summary>The line of column names.</summary>
internal sealed class TraceHeader(IReadOnlyList<TraceHeaderColumn> columns)
{
    private static readonly (string Name, TraceQuantity Quantity)[] PlainNames =
    [
        ("time_s", TraceQuantity.Time), ("rpm", TraceQuantity.Speed), ("gear", TraceQuantity.Gear), ("step", TraceQuantity.Step), ("oil_C", TraceQuantity.Oil),
    ];

    private static readonly (string Name, TraceQuantity Quantity)[] PressureNames =
        [("main", TraceQuantity.Main), ("clutch", TraceQuantity.Clutch), ("converter", TraceQuantity.Converter)];

    /// <summary>What the names that are refused begin with, and the name to write in their place.</summary>
    private static readonly (string Stem, string Write)[] Stems = [("time", "time_s"), ("rpm", "rpm"), ("gear", "gear"), ("step", "step"), ("oil", "oil_C")];

    public IReadOnlyList<TraceHeaderColumn> Columns { get; } = columns;

    public TraceHeaderColumn? Find(TraceQuantity quantity) => Columns.FirstOrDefault(column => column.Quantity == quantity);

    public static TraceHeader Read(scoped in SourceLines lines)
    {
        if (!lines.Current.Contains((byte)',') && lines.Current.IndexOfAny((byte)';', (byte)'\t') >= 0)
        {
            throw lines.Refused("the columns are not separated by commas; export the recording with commas between columns and a point in numbers.");
        }

        var columns = new List<TraceHeaderColumn>();
        var cells = new CsvCells(lines.Current);
        while (cells.Next())
        {
            TraceHeaderColumn column = Column(Excerpt.Of(cells.Current), lines);
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

        var header = new TraceHeader(columns);
        return header.Find(TraceQuantity.Time) is not null
            ? header
            : throw lines.Refused("there is no column time_s; the first line must name the columns, time_s (seconds) among them.");
    }

    private static TraceHeaderColumn Column(string name, scoped in SourceLines lines)
    {
        foreach ((string plain, TraceQuantity quantity) in PlainNames)
        {
            if (name == plain)
            {
                return new TraceHeaderColumn(name, quantity);
            }
        }

        foreach ((string stem, TraceQuantity quantity) in PressureNames)
        {
            if (name.StartsWith(stem, StringComparison.OrdinalIgnoreCase))
            {
                return Pressure(name, stem, quantity) ?? throw lines.Refused(
                    $"the column \"{name}\" has no known unit; name it {stem}_psi, {stem}_kPa, {stem}_bar, {stem}_kgfcm2, or {stem}_mA for a loop current.");
            }
        }

        foreach ((string stem, string write) in Stems)
        {
            if (name.StartsWith(stem, StringComparison.OrdinalIgnoreCase) && (name.Length == stem.Length || !char.IsAsciiLetter(name[stem.Length])))
            {
                throw lines.Refused($"the column \"{name}\" is not known; name it {write}, in that unit, or something that does not begin with {stem}.");
            }
        }

        return new TraceHeaderColumn(name, TraceQuantity.Ignored);
    }

    private static TraceHeaderColumn? Pressure(string name, string stem, TraceQuantity quantity)
    {
        if (!name.StartsWith(stem + "_", StringComparison.Ordinal))
        {
            return null;
        }

        string code = name[(stem.Length + 1)..];
        if (code == "mA")
        {
            return new TraceHeaderColumn(name, quantity);
        }

        return PressureUnits.TryParse(code, out PressureUnit unit) ? new TraceHeaderColumn(name, quantity, unit) : null;
    }
}
