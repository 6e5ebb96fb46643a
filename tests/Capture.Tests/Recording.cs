using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;

namespace LoggerBox.Capture.Tests;

/// <summary>Files under tests/recordings.</summary>
internal static class Recording
{
    /// <summary>One column with the time of each row that has it.</summary>
    public static List<(double Seconds, double Value)> Column(string path, string column)
    {
        string[] lines = Lines(path);
        int at = Array.IndexOf(lines[0].Split(','), column);
        return lines.Skip(1)
            .Select(line => line.Split(','))
            .Where(cells => cells[at].Length > 0)
            .Select(cells => (Number(cells[0]), Number(cells[at])))
            .ToList();
    }

    /// <summary>One number a line.</summary>
    public static IEnumerable<double> Numbers(string path) => Lines(path).Select(Number);

    private static string[] Lines(string path) =>
        File.ReadAllLines(Path.Combine(Folder(), path)).Where(line => line.Length > 0 && !line.StartsWith('#')).ToArray();

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Folder()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "LoggerBox.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return Path.Combine(folder!, "tests", "recordings");
    }
}
