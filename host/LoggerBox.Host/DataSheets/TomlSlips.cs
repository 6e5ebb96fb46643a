using System.Text.RegularExpressions;

namespace LoggerBox.Host.DataSheets;

/// <summary>Slips that people who have never seen TOML make, and what to write instead.</summary>
internal static partial class TomlSlips
{
    /// <param name="line">Where the parser stumbled, from 1; it may stand a line behind the slip.</param>
    /// <returns>The slip's line, and the advice; null where it is none of the known ones.</returns>
    public static (int Line, string? Advice) Find(string text, int line)
    {
        string[] lines = text.ReplaceLineEndings("\n").Split('\n');
        for (int at = line; at >= 1 && at >= line - 1; at--)
        {
            if (at <= lines.Length && In(lines[at - 1]) is { } advice)
            {
                return (at, advice);
            }
        }

        return (line, null);
    }

    private static string? In(string line)
    {
        Match comma = DecimalComma().Match(line);
        if (comma.Success)
        {
            return $"a decimal is written with a point; write {comma.Groups[1].Value}.{comma.Groups[2].Value} instead of {comma.Groups[1].Value},{comma.Groups[2].Value}.";
        }

        Match open = OpenQuote().Match(line);
        return open.Success ? $"the closing quotation mark is missing; write {Excerpt.Of(open.Groups[1].Value.TrimEnd())}\"." : null;
    }

    [GeneratedRegex(@"=\s*(-?\d+),(\d+)(?=\s*(?:[,}#]|$))")]
    private static partial Regex DecimalComma();

    [GeneratedRegex("^\\s*([^\"#]+=\\s*\"[^\"]*)$")]
    private static partial Regex OpenQuote();
}
