using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>The whole recorded sessions that lie in tests/recordings/sessions, made by another truck model than this project's own.</summary>
internal static class Recordings
{
    public static readonly string[] All = ["engine-power-low", "forward-clutch-leak", "healthy", "modulator-slow", "pump-worn", "stator-slipping"];

    private static readonly string Folder = FindFolder();

    public static string Trace(string name) => Path.Combine(Folder, name + ".csv");

    public static string Sheet(string name) => Path.Combine(Folder, name + ".sheet.toml");

    public static string[] Lines(string name) => File.ReadAllLines(Trace(name));

    /// <summary>The codes that are right answers, by what was put into the truck.</summary>
    public static HashSet<string> RightAnswers(string name)
    {
        using JsonDocument truth = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, name + ".truth.json")));
        return [.. truth.RootElement.GetProperty("accept").EnumerateArray().Select(code => code.GetString()!)];
    }

    private static string FindFolder()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string candidate = Path.Combine(folder.FullName, "tests", "recordings", "sessions");
            if (Directory.Exists(candidate))
            {
                return candidate;
            }
        }

        throw new DirectoryNotFoundException("tests/recordings/sessions lies above no folder of " + AppContext.BaseDirectory);
    }
}
