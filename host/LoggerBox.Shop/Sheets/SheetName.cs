using System;
using System.Linq;
using LoggerBox.Host;

namespace LoggerBox.Shop.Sheets;

/// <summary>A data sheet's file name: of letters that mean nothing to any file system, so that it can never be a path.</summary>
internal static class SheetName
{
    public const string Ending = ".toml";

    private const int Longest = 80;

    // Names that Windows keeps for devices, whatever ending they have.
    private static readonly string[] Devices =
    [
        "CON", "PRN", "AUX", "NUL", .. Enumerable.Range(0, 10).SelectMany(n => (string[])[$"COM{n}", $"LPT{n}"]),
    ];

    /// <exception cref="UserErrorException">It is no such name.</exception>
    public static string Demand(string name) => IsGood(name)
        ? name
        : throw new UserErrorException($"A data sheet's name is made of letters, digits, spaces, hyphens, underscores and dots, begins with a letter or digit, and ends in {Ending}: choose another.");

    public static bool IsGood(string name) =>
        name.Length <= Longest
        && name.EndsWith(Ending, StringComparison.Ordinal)
        && name.Length > Ending.Length
        && char.IsAsciiLetterOrDigit(name[0])
        && name.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is ' ' or '-' or '_' or '.')
        && !name.Contains("..", StringComparison.Ordinal)
        && !Devices.Contains(name.Split('.')[0].Trim(), StringComparer.OrdinalIgnoreCase);
}
