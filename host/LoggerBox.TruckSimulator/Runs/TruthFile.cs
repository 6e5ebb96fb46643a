using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Runs;

/// <summary>A run as it really was, in the trace format, so that any program that reads a trace can be shown the truth.</summary>
public static class TruthFile
{
    public static void Write(TextWriter writer, IEnumerable<TruthRow> rows)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(rows);
        writer.Write("time_s,rpm,main_psi,clutch_psi,converter_psi,gear,step,oil_C\n");
        foreach (TruthRow row in rows)
        {
            writer.Write(string.Create(
                CultureInfo.InvariantCulture,
                $"{row.Microseconds / 1e6:0.000},{row.Rpm:0.0},{Psi(row.MainPascal)},{Psi(row.ClutchPascal)},{Psi(row.ConverterPascal)},"));
            writer.Write(string.Create(
                CultureInfo.InvariantCulture, $"{Letter(row.Selector)},{StepCodes.Text(row.Step)},{row.OilCelsius:0.0}\n"));
        }
    }

    private static string Psi(double pascal) => Units.Psi(pascal).ToString("0.00", CultureInfo.InvariantCulture);

    private static char Letter(Selector selector) => selector switch
    {
        Selector.Forward => 'F',
        Selector.Reverse => 'R',
        _ => 'N',
    };
}
