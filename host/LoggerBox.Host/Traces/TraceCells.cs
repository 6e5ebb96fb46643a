using System;
using System.Text;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Traces;

/// <summary>What one cell may say: type and sensible range of each quantity. Wide enough for spikes and faults, too narrow for nonsense.</summary>
internal static class TraceCells
{
    /// <summary>Ten billion seconds: recordings that count from 1970 pass, nothing overflows in microseconds.</summary>
    public const double LargestSeconds = 1e10;

    private const double LargestRpm = 20000;
    private const double LowestPascal = -10e6;
    private const double HighestPascal = 40e6;

    private static readonly byte[][] StepTexts = Array.ConvertAll(Enum.GetValues<Step>(), step => Encoding.ASCII.GetBytes(StepCodes.Text(step)));

    public static long Microseconds(ReadOnlySpan<byte> cell, TraceHeaderColumn column, scoped in SourceLines lines) => column.Time switch
    {
        _ when cell.IsEmpty => throw lines.Refused($"{column.Name} is empty; every row needs its time."),
        TimeForm.Clock => ClockTime.TryParse(Excerpt.Of(cell), out long microseconds) && Math.Abs(microseconds) <= LargestSeconds * 1e6
            ? microseconds
            : throw lines.Refused($"{column.Name} is \"{Excerpt.Of(cell)}\", which is no time of a clock; write it as 14:05:07.250, or with its date before it as 2026-03-31."),
        TimeForm.Milliseconds => (long)Math.Round(Number(cell, column.Name, -LargestSeconds * 1000, LargestSeconds * 1000, "milliseconds", lines) * 1e3),
        _ => Microseconds(cell, column.Name, lines),
    };

    public static long Microseconds(ReadOnlySpan<byte> cell, string name, scoped in SourceLines lines) => cell.IsEmpty
        ? throw lines.Refused($"{name} is empty; every row needs its time.")
        : (long)Math.Round(Number(cell, name, -LargestSeconds, LargestSeconds, "seconds", lines) * 1e6);

    public static int SpeedTenths(ReadOnlySpan<byte> cell, scoped in SourceLines lines) =>
        cell.IsEmpty ? SampleSet.Missing : (int)Math.Round(Number(cell, "rpm", 0, LargestRpm, "rpm", lines) * 10);

    public static int OilTenths(ReadOnlySpan<byte> cell, scoped in SourceLines lines) =>
        cell.IsEmpty ? SampleSet.Missing : (int)Math.Round(Number(cell, "oil_C", -60, 250, "°C", lines) * 10);

    /// <summary>Far beyond the NE 43 band either way: a broken or shorted loop is a reading, 4000 is a column of the wrong unit.</summary>
    public static double Milliampere(ReadOnlySpan<byte> cell, string name, scoped in SourceLines lines) => Number(cell, name, -10, 40, "mA", lines);

    /// <param name="unitInPascal">Pascal in one of the column's unit.</param>
    public static double Pascal(ReadOnlySpan<byte> cell, string name, double unitInPascal, string unit, scoped in SourceLines lines) =>
        Number(cell, name, LowestPascal / unitInPascal, HighestPascal / unitInPascal, unit, lines) * unitInPascal;

    public static Gear Gear(ReadOnlySpan<byte> cell, scoped in SourceLines lines)
    {
        if (cell.IsEmpty)
        {
            return Protocol.Rules.Gear.Unknown;
        }

        return (cell.Length == 1 ? (char)cell[0] : '?') switch
        {
            'N' => Protocol.Rules.Gear.Neutral,
            'F' => Protocol.Rules.Gear.Forward,
            'R' => Protocol.Rules.Gear.Reverse,
            _ => throw lines.Refused($"the gear \"{Excerpt.Of(cell)}\" is none; write N, F, R or leave the cell empty."),
        };
    }

    public static Step Step(ReadOnlySpan<byte> cell, scoped in SourceLines lines)
    {
        for (int i = 0; i < StepTexts.Length; i++)
        {
            if (cell.SequenceEqual(StepTexts[i]))
            {
                return (Step)i;
            }
        }

        throw lines.Refused($"the step \"{Excerpt.Of(cell)}\" is none; write zero, idle-N, idle-F, idle-R, governed, relief, stall-F, stall-R, hold-N, hold-F, hold-R or leave the cell empty.");
    }

    private static double Number(ReadOnlySpan<byte> cell, string name, double lowest, double highest, string unit, scoped in SourceLines lines)
    {
        if (!DecimalNumber.TryParse(cell, out double value))
        {
            throw lines.Refused($"{name} is \"{Excerpt.Of(cell)}\", which is no number; a missing reading is an empty cell, the decimal sign a point.");
        }

        if (value < lowest || value > highest)
        {
            throw lines.Refused(FormattableString.Invariant($"{name} is {Excerpt.Of(cell)}, outside any sensible range ({lowest:0.##} to {highest:0.##} {unit})."));
        }

        return value;
    }
}
