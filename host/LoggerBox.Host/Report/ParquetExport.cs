using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Tables;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Report;

/// <summary>A session as an Apache Parquet file, with its units, its name and the digest of its records.</summary>
public static class ParquetExport
{
    private static readonly Dictionary<string, string> PlainUnits = new() { ["time_s"] = "s", ["rpm"] = "1/min", ["oil_C"] = "Cel" };

    /// <summary>Units after UCUM where the name of the column does not say it: 1/min is revolutions a minute, Cel degrees Celsius.</summary>
    /// <param name="id">The session's id in its archive.</param>
    /// <param name="fingerprint">SHA-256 of the record bytes, hexadecimal.</param>
    public static void Write(Stream file, RecordedSession session, string id, string title, string fingerprint, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(session);
        IReadOnlyList<TableColumn> columns = ExportedTrace.Columns(session, unit);
        ParquetTable.Write(file, columns, new Dictionary<string, string>
        {
            ["loggerbox.format"] = "loggerbox-trace/1",
            ["loggerbox.session"] = id,
            ["loggerbox.title"] = PlainText.Of(title),
            ["loggerbox.sha256"] = fingerprint,
            ["loggerbox.units"] = Units(columns, unit),
        });
    }

    /// <summary>Column name to unit, as JSON.</summary>
    private static string Units(IReadOnlyList<TableColumn> columns, PressureUnit unit)
    {
        using StringWriter text = new();
        JsonText.WriteLine(text, json =>
        {
            json.WriteStartObject();
            foreach (NumberColumn column in columns.OfType<NumberColumn>())
            {
                json.WriteString(column.Name, PlainUnits.GetValueOrDefault(column.Name, unit.Code()));
            }

            json.WriteEndObject();
        });
        return text.ToString().TrimEnd();
    }
}
