using System;
using System.Collections.Generic;
using System.Data.Common;
using System.Linq;

namespace LoggerBox.Host.Archive;

/// <summary>Copies all rows of one archive, as they are at one moment, into an empty one, whichever databases the two lie in.</summary>
internal static class ArchiveCopy
{
    /// <exception cref="UserErrorException">Reading or writing failed, or the copy is damaged; nothing of it is there.</exception>
    public static void Run(ArchiveFile from, ArchiveFile to) => to.Change(into => from.Look(open =>
    {
        foreach (ArchiveTable table in ArchiveTable.All)
        {
            Rows(open, into, table);
        }

        ArchiveBackup.RefuseDamaged(to);
        return true;
    }));

    private static void Rows(DbConnection open, DbConnection into, ArchiveTable table)
    {
        // Of job_sessions one database names the column of the order, and the other only knows it.
        string[] columns = [.. Columns(open, table).Union(Columns(into, table))];
        using DbCommand insert = into.CreateCommand();
        DbParameter[] values = [.. columns.Select((_, number) => Parameter(insert, "@v" + number))];
        using DbCommand select = open.CreateCommand();
#pragma warning disable CA2100 // Names of the schema.
        insert.CommandText = $"INSERT INTO {table.Name} ({string.Join(", ", columns)}) VALUES ({string.Join(", ", values.Select(value => value.ParameterName))})";
        select.CommandText = $"SELECT {string.Join(", ", columns)} FROM {table.Name} ORDER BY {table.Order}";
#pragma warning restore CA2100
        using DbDataReader reader = select.ExecuteReader();
        while (reader.Read())
        {
            for (int column = 0; column < columns.Length; column++)
            {
                values[column].Value = reader.GetValue(column);
            }

            insert.ExecuteNonQuery();
        }
    }

    private static IEnumerable<string> Columns(DbConnection open, ArchiveTable table)
    {
        using DbCommand command = open.CreateCommand();
#pragma warning disable CA2100 // A name of the schema.
        command.CommandText = $"SELECT * FROM {table.Name} LIMIT 0";
#pragma warning restore CA2100
        using DbDataReader reader = command.ExecuteReader();
        return [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetName)];
    }

    private static DbParameter Parameter(DbCommand command, string name)
    {
        DbParameter parameter = command.CreateParameter();
        parameter.ParameterName = name;
        command.Parameters.Add(parameter);
        return parameter;
    }
}
