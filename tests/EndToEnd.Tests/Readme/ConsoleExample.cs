using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;

namespace LoggerBox.EndToEnd.Tests.Readme;

/// <summary>One command of a console example, what the page shows under it, and whether it is ended there by Ctrl-C.</summary>
internal sealed partial record ConsoleExample(string[] Words, string[] Shown, bool Interrupted, int Number)
{
    public const string Prompt = "$ ";
    private const string CtrlC = "^C";

    private static readonly string[] Starts = ["dotnet run --project host/LoggerBox.App -- ", "loggerbox "];

    public static IEnumerable<ConsoleExample> Of(Fence fence)
    {
        int[] prompts = [.. Enumerable.Range(0, fence.Lines.Length).Where(index => fence.Lines[index].StartsWith(Prompt, StringComparison.Ordinal))];
        foreach ((int prompt, int end) in prompts.Zip(prompts.Skip(1).Append(fence.Lines.Length)))
        {
            string[] shown = fence.Lines[(prompt + 1)..end];
            bool interrupted = shown is [.., CtrlC];
            yield return new ConsoleExample(WordsOf(fence.Lines[prompt][Prompt.Length..])!, interrupted ? shown[..^1] : shown, interrupted, fence.Number + prompt);
        }
    }

    /// <summary>The words for the program; null where the line is another program's.</summary>
    public static string[]? WordsOf(string line)
    {
        string? start = Array.Find(Starts, start => line.StartsWith(start, StringComparison.Ordinal));
        return start is null ? null : [.. Word().Matches(line[start.Length..]).Select(word => word.Value.Replace("\"", "", StringComparison.Ordinal))];
    }

    [GeneratedRegex("""(?:[^\s"]|"[^"]*")+""")]
    private static partial Regex Word();
}
