using System;
using System.Collections.Generic;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Host.Archive;

/// <summary>Statements in one line each. Values always travel as parameters, never inside the SQL text.</summary>
internal static class SqliteStatements
{
    public static int Execute(this SqliteConnection connection, string sql, params (string Name, object? Value)[] parameters)
    {
        using SqliteCommand command = Command(connection, sql, parameters);
        return command.ExecuteNonQuery();
    }

    /// <summary>The first column of the first row as an integer; 0 when there is no row or it is null.</summary>
    public static long Scalar(this SqliteConnection connection, string sql, params (string Name, object? Value)[] parameters)
    {
        using SqliteCommand command = Command(connection, sql, parameters);
        return command.ExecuteScalar() is long value ? value : 0;
    }

    public static List<T> Rows<T>(
        this SqliteConnection connection, string sql, Func<SqliteDataReader, T> row, params (string Name, object? Value)[] parameters)
    {
        using SqliteCommand command = Command(connection, sql, parameters);
        using SqliteDataReader reader = command.ExecuteReader();
        List<T> rows = [];
        while (reader.Read())
        {
            rows.Add(Sound(row, reader));
        }

        return rows;
    }

    public static string Text(this SqliteDataReader row, string column) => row.GetString(row.GetOrdinal(column));

    public static long Integer(this SqliteDataReader row, string column) => row.GetInt64(row.GetOrdinal(column));

    public static long? IntegerOrNull(this SqliteDataReader row, string column) =>
        row.IsDBNull(row.GetOrdinal(column)) ? null : row.GetInt64(row.GetOrdinal(column));

    public static double? RealOrNull(this SqliteDataReader row, string column) =>
        row.IsDBNull(row.GetOrdinal(column)) ? null : row.GetDouble(row.GetOrdinal(column));

    /// <summary>A moment from its two columns NAME_utc and NAME_offset_minutes.</summary>
    public static DateTimeOffset? MomentOrNull(this SqliteDataReader row, string name) =>
        row.IntegerOrNull(name + "_utc") is long seconds
            ? DateTimeOffset.FromUnixTimeSeconds(seconds).ToOffset(TimeSpan.FromMinutes(row.Integer(name + "_offset_minutes")))
            : null;

    // SQLite gives what stands in the file, whatever the schema promised: text for a number, nothing where something must be, moments before time began.
    private static T Sound<T>(Func<SqliteDataReader, T> row, SqliteDataReader reader)
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

    private static SqliteCommand Command(SqliteConnection connection, string sql, (string Name, object? Value)[] parameters)
    {
        SqliteCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // Every text comes from this folder's own constants.
        command.CommandText = sql;
#pragma warning restore CA2100
        foreach ((string name, object? value) in parameters)
        {
            command.Parameters.AddWithValue(name, value ?? DBNull.Value);
        }

        return command;
    }
}
