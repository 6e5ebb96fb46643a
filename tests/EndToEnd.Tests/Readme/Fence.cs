using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;

namespace LoggerBox.EndToEnd.Tests.Readme;

/// <summary>What stands between two rows of backticks: the words behind the first, the lines, and the number of its first line in the page.</summary>
internal sealed record Fence(string[] Info, string[] Lines, int Number)
{
    private const string Mark = "```";

    public string Kind => Info.FirstOrDefault("");

    /// <summary>The name under which the page's reader has this text as a file, where the fence gives one.</summary>
    public string? File => Info.Length == 2 ? Info[1] : null;

    public static string Page { get; } = FindPage();

    public static IEnumerable<Fence> OfPage()
    {
        string[] lines = System.IO.File.ReadAllLines(Page);
        int[] marks = [.. Enumerable.Range(0, lines.Length).Where(index => lines[index].StartsWith(Mark, StringComparison.Ordinal))];
        foreach (int[] pair in marks.Chunk(2))
        {
            string[] info = lines[pair[0]][Mark.Length..].Split(' ', StringSplitOptions.RemoveEmptyEntries);
            yield return new Fence(info, lines[(pair[0] + 1)..pair[1]], pair[0] + 2);
        }
    }

    private static string FindPage()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !System.IO.File.Exists(Path.Combine(folder.FullName, "README.md")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder!.FullName, "README.md");
    }
}
