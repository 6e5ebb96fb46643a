using System;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Traces;

/// <summary>Fills one array per column, row by row.</summary>
internal sealed class TraceRows
{
    private readonly TraceHeader header;
    private readonly long[] times;
    private readonly int[]? speed;
    private readonly Gear[]? gears;
    private readonly Step[]? steps;
    private readonly int[]? oil;
    private readonly double[]?[] pressures = new double[]?[3];
    private readonly bool[]?[] present = new bool[]?[3];
    private int count;

    /// <param name="capacity">No more rows than this will come.</param>
    public TraceRows(TraceHeader header, int capacity)
    {
        this.header = header;
        times = new long[capacity];
        speed = Has(TraceQuantity.Speed) ? new int[capacity] : null;
        gears = Has(TraceQuantity.Gear) ? new Gear[capacity] : null;
        steps = Has(TraceQuantity.Step) ? new Step[capacity] : null;
        oil = Has(TraceQuantity.Oil) ? new int[capacity] : null;
        for (int i = 0; i < pressures.Length; i++)
        {
            bool has = Has(TraceQuantity.Main + i);
            pressures[i] = has ? new double[capacity] : null;
            present[i] = has ? new bool[capacity] : null;
        }
    }

    public int Count => count;

    public long[] Microseconds => times.AsSpan(0, count).ToArray();

    public int[]? SpeedTenths => Cut(speed);

    public Gear[]? Gears => Cut(gears);

    public Step[]? Steps => Cut(steps);

    public int[]? OilTenthsCelsius => Cut(oil);

    /// <param name="range">What the loop current stands for; null for a pressure.</param>
    public PressureColumn? Pressure(TraceQuantity quantity, ChannelRange? range)
    {
        int i = quantity - TraceQuantity.Main;
        return header.Find(quantity) is TraceHeaderColumn column
            ? new PressureColumn(column.Unit, range, Cut(pressures[i])!, Cut(present[i])!)
            : null;
    }

    public void Add(scoped in SourceLines lines)
    {
        var cells = new CsvCells(lines.Current);
        for (int i = 0; i < header.Columns.Count; i++)
        {
            if (!cells.Next())
            {
                throw lines.Refused(cells.BrokenQuote
                    ? "a quote is opened and not closed in this line, or stands inside a cell."
                    : $"the row is too short: it has {i} cells, the first line names {header.Columns.Count}.");
            }

            Put(header.Columns[i], cells.Current, lines);
        }

        while (cells.Next())
        {
            if (!cells.Current.IsEmpty)
            {
                throw lines.Refused($"the row is too long: the first line names {header.Columns.Count} columns (is the decimal sign a comma?).");
            }
        }

        if (cells.BrokenQuote)
        {
            throw lines.Refused("a quote is opened and not closed in this line, or stands inside a cell.");
        }

        count++;
    }

    private void Put(TraceHeaderColumn column, ReadOnlySpan<byte> cell, scoped in SourceLines lines)
    {
        switch (column.Quantity)
        {
            case TraceQuantity.Time:
                PutTime(TraceCells.Microseconds(cell, column, lines), lines);
                break;
            case TraceQuantity.Speed:
                speed![count] = TraceCells.SpeedTenths(cell, lines);
                break;
            case TraceQuantity.Gear:
                gears![count] = TraceCells.Gear(cell, lines);
                break;
            case TraceQuantity.Step:
                steps![count] = TraceCells.Step(cell, lines);
                break;
            case TraceQuantity.Oil:
                oil![count] = TraceCells.OilTenths(cell, lines);
                break;
            case TraceQuantity.Main or TraceQuantity.Clutch or TraceQuantity.Converter when !cell.IsEmpty:
                int i = column.Quantity - TraceQuantity.Main;
                present[i]![count] = true;
                pressures[i]![count] = column.Unit is PressureUnit unit
                    ? TraceCells.Pascal(cell, column.Name, unit.InPascal(), unit.Code(), lines)
                    : TraceCells.Milliampere(cell, column.Name, lines);
                break;
        }
    }

    private void PutTime(long microseconds, scoped in SourceLines lines)
    {
        if (count > 0 && microseconds <= times[count - 1])
        {
            string how = microseconds < times[count - 1] ? "goes back" : "stands still";
            throw lines.Refused(FormattableString.Invariant(
                $"time {how}: {microseconds / 1e6:0.000000} s after {times[count - 1] / 1e6:0.000000} s; time must grow from row to row."));
        }

        times[count] = microseconds;
    }

    private bool Has(TraceQuantity quantity) => header.Find(quantity) is not null;

    private T[]? Cut<T>(T[]? column) => column?.AsSpan(0, count).ToArray();
}
