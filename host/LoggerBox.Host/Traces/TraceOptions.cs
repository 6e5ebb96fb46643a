using System;
using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.Host.Traces;

/// <summary>Whether the options of the command line fit the columns of the file.</summary>
internal static class TraceOptions
{
    private const double MostPulsesPerRevolution = 1000;

    /// <returns>Notes on what is ignored.</returns>
    public static List<string> Check(TraceSource source, TraceHeader header, string fileName)
    {
        List<string> notes = [.. Ignored(source, header, fileName)];
        CheckRange(source.RangeMain, header, TraceQuantity.Main, "main", notes);
        CheckRange(source.RangeClutch, header, TraceQuantity.Clutch, "clutch", notes);
        CheckRange(source.RangeConverter, header, TraceQuantity.Converter, "converter", notes);
        CheckPulses(source, header, notes);
        return notes;
    }

    /// <summary>A foreign recording has many columns: of these one sentence.</summary>
    private static IEnumerable<string> Ignored(TraceSource source, TraceHeader header, string fileName)
    {
        string[] names = [.. header.Columns.Where(column => column.Quantity == TraceQuantity.Ignored).Select(column => $"\"{column.Name}\"")];
        return source.Columns is null || names.Length < 2
            ? names.Select(name => $"The column {name} of {fileName} is not known and was ignored.")
            : [$"The columns {string.Join(", ", names)} of {fileName} are not known and were ignored."];
    }

    private static void CheckRange(ChannelRange? range, TraceHeader header, TraceQuantity quantity, string name, List<string> notes)
    {
        TraceHeaderColumn? column = header.Find(quantity);
        bool loop = column is { Unit: null };
        if (loop && range is null)
        {
            throw new UserErrorException($"{column!.Name} is a loop current; say what 4 to 20 mA stand for, for example --range-{name} 0..500psi.", usage: true);
        }

        if (!loop && range is not null)
        {
            notes.Add(column is null ? $"--range-{name} was ignored: there is no column {name}_mA." : $"--range-{name} was ignored: {column.Name} is a pressure already.");
        }
    }

    private static void CheckPulses(TraceSource source, TraceHeader header, List<string> notes)
    {
        if (source.PulsesPath is null)
        {
            if (source.PulsesPerRevolution is not null)
            {
                notes.Add("--pulses-per-rev was ignored: no --pulses file was given.");
            }

            return;
        }

        if (source.PulsesPerRevolution is not double pulses)
        {
            throw new UserErrorException("--pulses needs --pulses-per-rev: how many edges the pickup gives in one turn of the engine (0.5 for one plug lead of a four-stroke).", usage: true);
        }

        if (!(pulses > 0 && pulses <= MostPulsesPerRevolution))
        {
            throw new UserErrorException(FormattableString.Invariant($"--pulses-per-rev {pulses} is none that a pickup gives; it lies above 0 and up to {MostPulsesPerRevolution}."), usage: true);
        }

        if (header.Find(TraceQuantity.Speed) is not null)
        {
            notes.Add("The column rpm was ignored: the speed comes from the pulses.");
        }
    }
}
