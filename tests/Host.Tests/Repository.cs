using System;
using System.IO;
using System.Linq;

namespace LoggerBox.Host.Tests;

/// <summary>The clone that these tests were built in.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    public static string[] ExampleSheets => [.. Directory.GetFiles(Path.Combine(Root, "examples"), "*.toml").Order()];

    private static string Find()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "LoggerBox.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? throw new DirectoryNotFoundException("LoggerBox.sln stands in no folder above " + AppContext.BaseDirectory);
    }
}
