using System;
using System.Linq;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Traces;

/// <summary>The names that a trace's columns have, and what each stands for.</summary>
internal static class TraceNames
{
    private static readonly TraceHeaderColumn[] Plain =
    [
        new("time_s", TraceQuantity.Time), new("rpm", TraceQuantity.Speed), new("gear", TraceQuantity.Gear), new("step", TraceQuantity.Step), new("oil_C", TraceQuantity.Oil),
    ];

    /// <summary>Times as other instruments write them; only a column that was named for one is read so.</summary>
    private static readonly TraceHeaderColumn[] OtherTimes =
        [new("time_ms", TraceQuantity.Time, Time: TimeForm.Milliseconds), new("time_clock", TraceQuantity.Time, Time: TimeForm.Clock)];

    private static readonly (string Stem, TraceQuantity Quantity)[] Pressures =
        [("main", TraceQuantity.Main), ("clutch", TraceQuantity.Clutch), ("converter", TraceQuantity.Converter)];

    /// <summary>What the names that are refused begin with, and the name to write in their place.</summary>
    private static readonly (string Stem, string Write, TraceQuantity Quantity)[] Stems =
    [
        ("time", "time_s", TraceQuantity.Time), ("rpm", "rpm", TraceQuantity.Speed), ("gear", "gear", TraceQuantity.Gear), ("step", "step", TraceQuantity.Step), ("oil", "oil_C", TraceQuantity.Oil),
    ];

    /// <summary>Everything that a column of another name may be said to be, for a sentence.</summary>
    public static string Targets { get; } = string.Join(
        ", ",
        Plain[..1].Concat(OtherTimes).Concat(Plain[1..]).Select(column => column.Name).Concat(Pressures.Select(pressure => $"{pressure.Stem}_U"))) + " (U is psi, kPa, bar, kgfcm2 or mA)";

    /// <summary>Null for a name that is none of a trace file's.</summary>
    public static TraceHeaderColumn? Of(string name) => Array.Find(Plain, column => column.Name == name) ?? Pressures.Select(pressure => Pressure(name, pressure.Stem, pressure.Quantity)).FirstOrDefault(column => column is not null);

    /// <summary>The same where a person says what a column is.</summary>
    public static TraceHeaderColumn? Target(string name) => Of(name) ?? Array.Find(OtherTimes, column => column.Name == name);

    /// <summary>A name that begins like a known one is a slip: which reading it is like, and what to write.</summary>
    public static (TraceQuantity Quantity, string Advice)? Like(string name)
    {
        foreach ((string stem, TraceQuantity quantity) in Pressures)
        {
            if (name.StartsWith(stem, StringComparison.OrdinalIgnoreCase))
            {
                return (quantity, $"has no known unit; name it {stem}_psi, {stem}_kPa, {stem}_bar, {stem}_kgfcm2, or {stem}_mA for a loop current.");
            }
        }

        foreach ((string stem, string write, TraceQuantity quantity) in Stems)
        {
            if (name.StartsWith(stem, StringComparison.OrdinalIgnoreCase) && (name.Length == stem.Length || !char.IsAsciiLetter(name[stem.Length])))
            {
                return (quantity, $"is not known; name it {write}, in that unit, or something that does not begin with {stem}.");
            }
        }

        return null;
    }

    private static TraceHeaderColumn? Pressure(string name, string stem, TraceQuantity quantity)
    {
        if (!name.StartsWith(stem + "_", StringComparison.Ordinal))
        {
            return null;
        }

        string code = name[(stem.Length + 1)..];
        return code == "mA" ? new TraceHeaderColumn(name, quantity)
            : PressureUnits.TryParse(code, out PressureUnit unit) ? new TraceHeaderColumn(name, quantity, unit)
            : null;
    }
}
