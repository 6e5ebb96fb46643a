using System;
using System.Linq;
using System.Text;

namespace LoggerBox.Host;

/// <summary>A piece of a stranger's file, fit to stand in a message: one line, short, no control characters.</summary>
internal static class Excerpt
{
    private const int Longest = 100;

    public static string Of(string text)
    {
        string plain = string.Concat(text.Take(Longest + 1).Select(letter => char.IsControl(letter) ? ' ' : letter));
        return plain.Length <= Longest ? plain : plain[..(Longest - 3)] + "...";
    }

    /// <summary>Bytes that are no valid UTF-8 show as replacement characters.</summary>
    public static string Of(ReadOnlySpan<byte> utf8) => Of(Encoding.UTF8.GetString(utf8[..Math.Min(utf8.Length, 4 * Longest)]));
}
