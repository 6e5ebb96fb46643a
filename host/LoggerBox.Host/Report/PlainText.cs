using System;
using System.Linq;

namespace LoggerBox.Host.Report;

/// <summary>Text of others (sheets, customers, loggers) without what steers a terminal, breaks a line or turns the order of letters round.</summary>
public static class PlainText
{
    // Almost every text is as it was, and a page's curves are texts of many thousand letters.
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        foreach (char letter in text)
        {
            if (letter is < ' ' or > '~' && Steers(letter))
            {
                return Without(text);
            }
        }

        return text;
    }

    private static string Without(string text) => string.Concat(text.Select(letter => Steers(letter) ? ' ' : letter));

    private static bool Steers(char letter) => char.IsControl(letter) || IsDirection(letter) || letter is '\u2028' or '\u2029';

    // The marks, embeddings, overrides and isolates of the Unicode bidirectional algorithm (UAX #9, table 4): text behind one can be shown backwards.
    private static bool IsDirection(char letter) => letter is '\u061C' or '\u200E' or '\u200F' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
