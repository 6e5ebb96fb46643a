using System;
using System.Collections.Generic;
using System.Data.Common;

namespace LoggerBox.Host.Archive;

/// <summary>Statements in one line each, in the words that both databases know. Values always travel as parameters, never inside the SQL text.</summary>
internal static class Statements
{
    public static int Execute(this DbConnection connection, string sql, params (string Name, object? Value)[] parameters)
    {
        using DbCommand command = Command(connection, sql, parameters);
        return command.ExecuteNonQuery();
    }

    /// <summary>The first column of the first row as an integer; 0 when there is no row or it is null.</summary>
    public static long Scalar(this DbConnection connection, string sql, params (string Name, object? Value)[] parameters)
    {
        using DbCommand command = Command(connection, sql, parameters);
        return command.ExecuteScalar() is long value ? value : 0;
    }

    public static List<T> Rows<T>(
        this DbConnection connection, string sql, Func<DbDataReader, T> row, params (string Name, object? Value)[] parameters)
    {
        using DbCommand command = Command(connection, sql, parameters);
        using DbDataReader reader = command.ExecuteReader();
        List<T> rows = [];
        while (reader.Read())
        {
            rows.Add(Sound(row, reader));
        }

        return rows;
    }

    public static string Text(this DbDataReader row, string column) => row.GetString(row.GetOrdinal(column));

    public static long Integer(this DbDataReader row, string column) => row.GetInt64(row.GetOrdinal(column));

    public static long? IntegerOrNull(this DbDataReader row, string column) =>
        row.IsDBNull(row.GetOrdinal(column)) ? null : row.GetInt64(row.GetOrdinal(column));

    public static double? RealOrNull(this DbDataReader row, string column) =>
        row.IsDBNull(row.GetOrdinal(column)) ? null : row.GetDouble(row.GetOrdinal(column));

    /// <summary>A moment from its two columns NAME_utc and NAME_offset_minutes.</summary>
    public static DateTimeOffset? MomentOrNull(this DbDataReader row, string name) =>
        row.IntegerOrNull(name + "_utc") is long seconds
            ? DateTimeOffset.FromUnixTimeSeconds(seconds).ToOffset(TimeSpan.FromMinutes(row.Integer(name + "_offset_minutes")))
            : null;

    // SQLite gives what stands in the file, whatever the schema promised: text for a number, nothing where something must be, moments before time began.
    private static T Sound<T>(Func<DbDataReader, T> row, DbDataReader reader)
    {
        try
        {
            return row(reader);
        }
        catch (Exception error) when (error is InvalidCastException or InvalidOperationException or ArgumentException or OverflowException or FormatException)
        {
            throw new DamagedRowException(error.Message, error);
        }
    }

    private static DbCommand Command(DbConnection connection, string sql, (string Name, object? Value)[] parameters)
    {
        DbCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // Every text comes from this folder's own constants.
        command.CommandText = sql;
#pragma warning restore CA2100
        foreach ((string name, object? value) in parameters)
        {
            DbParameter parameter = command.CreateParameter();
            parameter.ParameterName = name;
            parameter.Value = value ?? DBNull.Value;
            command.Parameters.Add(parameter);
        }

        return command;
    }
}
