using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;

namespace LoggerBox.ShopBench.Speed;

/// <summary>A million sample sets: a recorded test over and over, each time after the other.</summary>
internal static class LongRecording
{
    public const int Rows = 1_000_000;

    public static void Write(string trace, string path)
    {
        string[] lines = File.ReadAllLines(trace);
        (double Second, string Cells)[] rows = [.. lines.Skip(1).Where(line => line.Length > 0).Select(Split)];
        double length = rows[^1].Second + rows[1].Second - rows[0].Second;
        using var file = new StreamWriter(path, append: false, new UTF8Encoding(false)) { NewLine = "\n" };
        file.WriteLine(lines[0]);
        for (int i = 0; i < Rows; i++)
        {
            (double second, string rest) = rows[i % rows.Length];
            file.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{second + (i / rows.Length * length):F3},{rest}"));
        }
    }

    private static (double, string) Split(string line)
    {
        int comma = line.IndexOf(',', StringComparison.Ordinal);
        return (double.Parse(line[..comma], CultureInfo.InvariantCulture), line[(comma + 1)..]);
    }
}
