using System.Collections.Generic;
using System.Globalization;
using Microsoft.Data.Sqlite;

namespace LoggerBox.Benchmarks.Day;

/// <summary>What is compared with: the same sample sets as a row each, as most would store them: one transaction, a prepared statement.</summary>
internal static class RowPerSample
{
    public static void Import(string path, IEnumerable<(long Microseconds, short[] Counts)> sets)
    {
        using SqliteConnection connection = new(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ConnectionString);
        connection.Open();
        using SqliteCommand table = connection.CreateCommand();
        table.CommandText = "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE samples (us INTEGER PRIMARY KEY, rpm INTEGER, main INTEGER, clutch INTEGER, converter INTEGER)";
        table.ExecuteNonQuery();
        using SqliteTransaction all = connection.BeginTransaction();
        using SqliteCommand insert = connection.CreateCommand();
        insert.CommandText = "INSERT INTO samples VALUES ($0, $1, $2, $3, $4)";
        for (int i = 0; i < 5; i++)
        {
            insert.Parameters.Add("$" + i.ToString(CultureInfo.InvariantCulture), SqliteType.Integer);
        }

        insert.Prepare();
        foreach ((long microseconds, short[] counts) in sets)
        {
            insert.Parameters[0].Value = microseconds;
            for (int c = 0; c < counts.Length; c++)
            {
                insert.Parameters[c + 1].Value = counts[c];
            }

            insert.ExecuteNonQuery();
        }

        all.Commit();
    }
}
