using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Report;

namespace LoggerBox.Shop.Sheets;

/// <summary>What `sheet check` says of a text.</summary>
internal sealed record SheetCheck(bool IsGood, string Summary, IReadOnlyList<SheetLine> Lines)
{
    public static SheetCheck Of(string text, string name)
    {
        SheetLine[] lines = [.. DataSheetReader.CheckText(text, name).Select(finding => new SheetLine(finding.Line, PlainText.Of(finding.Text), finding.Level == FindingLevel.Error))];
        int errors = lines.Count(line => line.IsError);
        return new SheetCheck(errors == 0, Summarise(errors, lines), lines);
    }

    private static string Summarise(int errors, SheetLine[] lines) => (errors, lines.Length) switch
    {
        (0, 0) => "Nothing wrong: it can be saved.",
        (0, 1) => "It can be saved; 1 line deserves a look.",
        (0, var doubts) => $"It can be saved; {doubts} lines deserve a look.",
        (1, _) => $"Not saved: 1 error, in line {First(lines)}. Correct it, then save again.",
        _ => $"Not saved: {errors} errors, the first in line {First(lines)}. Correct them, then save again.",
    };

    private static int First(SheetLine[] lines) => lines.First(line => line.IsError).Line;
}

/// <param name="IsError">False: a doubt, which hinders nothing.</param>
internal sealed record SheetLine(int Line, string Text, bool IsError);
