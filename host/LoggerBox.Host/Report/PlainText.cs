using System.Linq;

namespace LoggerBox.Host.Report;

/// <summary>Text of others (sheets, customers, loggers) without what steers a terminal or breaks a line.</summary>
public static class PlainText
{
    public static string Of(string text) =>
        text.Any(char.IsControl) ? string.Concat(text.Select(letter => char.IsControl(letter) ? ' ' : letter)) : text;
}
