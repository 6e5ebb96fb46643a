using System;
using System.Collections.Generic;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Fuzz.Mutations;

/// <summary>Rows that no program of ours would write: the tables lose their promises first.</summary>
internal static class RowDamage
{
    private static readonly string[] Tables = ["sessions", "parts", "jobs", "job_sessions", "corrections"];

    private static readonly object[] Values =
    [
        DBNull.Value, "", "x", "../../x", "\u001b[2J", -1L, 0L, 1L, 7L, 255L, 1L << 31, (1L << 32) + 1, 1L << 40, long.MaxValue, long.MinValue, double.MaxValue, -0.5, "NaN", "9999999999999", "complete", "S1", "start-utc",
        Array.Empty<byte>(), new byte[3], new byte[70_000], new string('y', 2_000_000),
    ];

    public static void Do(string path, Random random)
    {
        using SqliteConnection open = new(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false, ForeignKeys = false }.ConnectionString);
        open.Open();
        for (int change = random.Next(1, 4); change > 0; change--)
        {
            string table = Tables[random.Next(Tables.Length)];
            Execute(open, $"CREATE TABLE loose AS SELECT * FROM {table}; DROP TABLE {table}; ALTER TABLE loose RENAME TO {table};");
            List<string> columns = Columns(open, table);
            string row = $"(SELECT rowid FROM {table} LIMIT 1 OFFSET {random.Next(3)})";
            Execute(open, random.Next(10) switch
            {
                0 => $"DELETE FROM {table} WHERE rowid = {row}",
                1 => $"INSERT INTO {table} SELECT * FROM {table}",
                _ => $"UPDATE {table} SET {columns[random.Next(columns.Count)]} = $value WHERE rowid = {row}",
            }, Values[random.Next(Values.Length)]);
        }
    }

    private static List<string> Columns(SqliteConnection open, string table)
    {
        List<string> columns = [];
        using SqliteCommand command = open.CreateCommand();
        command.CommandText = $"SELECT name FROM pragma_table_info('{table}')";
        using SqliteDataReader reader = command.ExecuteReader();
        while (reader.Read())
        {
            columns.Add(reader.GetString(0));
        }

        return columns;
    }

    private static void Execute(SqliteConnection open, string sql, object? value = null)
    {
        using SqliteCommand command = open.CreateCommand();
        command.CommandText = sql;
        command.Parameters.AddWithValue("$value", value ?? DBNull.Value);
        command.ExecuteNonQuery();
    }
}
