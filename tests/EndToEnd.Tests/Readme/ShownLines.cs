using System;
using System.Linq;
using System.Text.RegularExpressions;

namespace LoggerBox.EndToEnd.Tests.Readme;

/// <summary>Lines of an example beside what was printed. "…" in a line stands for any text of that line, alone for one line or more.</summary>
internal static class ShownLines
{
    public const string Anything = "…";

    /// <summary>Null where they are the same; else which shown line is the first that was not printed there.</summary>
    public static string? Difference(string[] shown, string printed)
    {
        if (Fits(shown, printed, @"\z"))
        {
            return null;
        }

        int good = Enumerable.Range(0, shown.Length + 1).Last(count => Fits(shown[..count], printed, ""));
        return good < shown.Length ? $"not printed there: {shown[good]}" : "more was printed than is shown";
    }

    private static bool Fits(string[] shown, string printed, string end) =>
        Regex.IsMatch(printed, @"\A" + string.Concat(shown.Select(Pattern)) + end, RegexOptions.NonBacktracking | RegexOptions.CultureInvariant);

    private static string Pattern(string line) => line == Anything
        ? "(?:[^\n]*\n)+"
        : string.Join("[^\n]*", line.Split(Anything).Select(Regex.Escape)) + "\n";
}
