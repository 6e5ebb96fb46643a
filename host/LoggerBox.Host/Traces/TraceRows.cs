using System;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Traces;

/// <summary>Fills one array per column, row by row.</summary>
internal sealed class TraceRows
{
    private readonly TraceHeader _header;
    private readonly long[] _microseconds;
    private readonly int[]? _speed;
    private readonly Gear[]? _gears;
    private readonly Step[]? _steps;
    private readonly int[]? _oil;
    private readonly double[]?[] _pressures = new double[]?[3];
    private readonly bool[]?[] _present = new bool[]?[3];
    private int _count;

    /// <param name="capacity">No more rows than this will come.</param>
    public TraceRows(TraceHeader header, int capacity)
    {
        _header = header;
        _microseconds = new long[capacity];
        _speed = Has(TraceQuantity.Speed) ? new int[capacity] : null;
        _gears = Has(TraceQuantity.Gear) ? new Gear[capacity] : null;
        _steps = Has(TraceQuantity.Step) ? new Step[capacity] : null;
        _oil = Has(TraceQuantity.Oil) ? new int[capacity] : null;
        for (int i = 0; i < _pressures.Length; i++)
        {
            bool has = Has(TraceQuantity.Main + i);
            _pressures[i] = has ? new double[capacity] : null;
            _present[i] = has ? new bool[capacity] : null;
        }
    }

    public int Count => _count;

    public long[] Microseconds => _microseconds.AsSpan(0, _count).ToArray();

    public int[]? SpeedTenths => Cut(_speed);

    public Gear[]? Gears => Cut(_gears);

    public Step[]? Steps => Cut(_steps);

    public int[]? OilTenthsCelsius => Cut(_oil);

    /// <param name="range">What the loop current stands for; null for a pressure.</param>
    public PressureColumn? Pressure(TraceQuantity quantity, ChannelRange? range)
    {
        int i = quantity - TraceQuantity.Main;
        return _header.Find(quantity) is TraceHeaderColumn column
            ? new PressureColumn(column.Unit, range, Cut(_pressures[i])!, Cut(_present[i])!)
            : null;
    }

    public void Add(scoped in SourceLines lines)
    {
        var cells = new CsvCells(lines.Current);
        for (int i = 0; i < _header.Columns.Count; i++)
        {
            if (!cells.Next())
            {
                throw lines.Refused(cells.BrokenQuote
                    ? "a quote is opened and not closed in this line, or stands inside a cell."
                    : $"the row is too short: it has {i} cells, the first line names {_header.Columns.Count}.");
            }

            Put(_header.Columns[i], cells.Current, lines);
        }

        while (cells.Next())
        {
            if (!cells.Current.IsEmpty)
            {
                throw lines.Refused($"the row is too long: the first line names {_header.Columns.Count} columns (is the decimal sign a comma?).");
            }
        }

        if (cells.BrokenQuote)
        {
            throw lines.Refused("a quote is opened and not closed in this line, or stands inside a cell.");
        }

        _count++;
    }

    private void Put(TraceHeaderColumn column, ReadOnlySpan<byte> cell, scoped in SourceLines lines)
    {
        switch (column.Quantity)
        {
            case TraceQuantity.Time:
                PutTime(TraceCells.Microseconds(cell, "time_s", lines), lines);
                break;
            case TraceQuantity.Speed:
                _speed![_count] = TraceCells.SpeedTenths(cell, lines);
                break;
            case TraceQuantity.Gear:
                _gears![_count] = TraceCells.Gear(cell, lines);
                break;
            case TraceQuantity.Step:
                _steps![_count] = TraceCells.Step(cell, lines);
                break;
            case TraceQuantity.Oil:
                _oil![_count] = TraceCells.OilTenths(cell, lines);
                break;
            case TraceQuantity.Main or TraceQuantity.Clutch or TraceQuantity.Converter when !cell.IsEmpty:
                int i = column.Quantity - TraceQuantity.Main;
                _present[i]![_count] = true;
                _pressures[i]![_count] = column.Unit is PressureUnit unit
                    ? TraceCells.Pascal(cell, column.Name, unit.InPascal(), unit.Code(), lines)
                    : TraceCells.Milliampere(cell, column.Name, lines);
                break;
        }
    }

    private void PutTime(long microseconds, scoped in SourceLines lines)
    {
        if (_count > 0 && microseconds <= _microseconds[_count - 1])
        {
            string how = microseconds < _microseconds[_count - 1] ? "goes back" : "stands still";
            throw lines.Refused(FormattableString.Invariant(
                $"time {how}: {microseconds / 1e6:0.000000} s after {_microseconds[_count - 1] / 1e6:0.000000} s; time must grow from row to row."));
        }

        _microseconds[_count] = microseconds;
    }

    private bool Has(TraceQuantity quantity) => _header.Find(quantity) is not null;

    private T[]? Cut<T>(T[]? column) => column?.AsSpan(0, _count).ToArray();
}
