using System;
using System.Linq;
using System.Text.RegularExpressions;

namespace LoggerBox.Host.Archive;

/// <summary>Tells an address of a server from the name of a file by its words alone, and takes passwords out of whatever is printed.</summary>
public static partial class PlaceWords
{
    private static readonly string[] Schemes = ["postgresql://", "postgres://"];

    // As connection strings of .NET have it.
    private static readonly string[] ServerKeys = ["host", "server"];

    public static bool IsServer(string place) =>
        Schemes.Any(scheme => place.StartsWith(scheme, StringComparison.OrdinalIgnoreCase))
        || place.Split(';').Any(pair => pair.Contains('=', StringComparison.Ordinal) && ServerKeys.Contains(pair.Split('=')[0].Trim(), StringComparer.OrdinalIgnoreCase));

    /// <summary>The same words, with dots where a password stood: somebody may have typed an address where it does not belong.</summary>
    public static string WithoutPassword(string words) =>
        words.Contains(":/", StringComparison.Ordinal) || words.Contains('=', StringComparison.Ordinal) ? InPair().Replace(InAddress().Replace(words, "$1..."), "$1...") : words;

    // Greedy up to the last @ before a blank: one within the password belongs to it.
    [GeneratedRegex(@"(\bpostgres(?:ql)?:/+[^\s:@/]*:)\S+(?=@)", RegexOptions.IgnoreCase)]
    private static partial Regex InAddress();

    [GeneratedRegex("""(\b(?:ssl ?password|password|pwd)\s*=\s*)("[^"]*"|'[^']*'|[^;&\s'"]+)""", RegexOptions.IgnoreCase)]
    private static partial Regex InPair();
}
