using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.Linq;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using System.Threading.Tasks;
using LoggerBox.EndToEnd.Tests;
using LoggerBox.Shop.Tests;
using Microsoft.Playwright;

namespace LoggerBox.ShopBench.Pictures;

/// <summary>What `watch` sends to a terminal of 80 by 24, put together as a terminal would and drawn by the browser.</summary>
internal static partial class TerminalPage
{
    private const int Width = 80;
    private const int Height = 24;

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <param name="shows">What stands on the screen when the picture is taken.</param>
    public static async Task Take(Browser browser, string file, string port, string sheet, string shows)
    {
        string screen = await Screen(port, sheet, shows);
        IPage page = await browser.Show(
            "<!DOCTYPE html><html lang=\"en\"><title>watch</title><style>body{margin:0;display:inline-block}pre{margin:0;padding:12px 16px;color:#e8e8e8;background:#101418;font:16px/1.2 \"DejaVu Sans Mono\",monospace}</style><pre>"
            + WebUtility.HtmlEncode(screen) + "</pre></html>");
        await page.Locator("pre").ScreenshotAsync(new LocatorScreenshotOptions { Path = file });
        await page.CloseAsync();
        Console.WriteLine(file);
    }

    private static async Task<string> Screen(string port, string sheet, string shows)
    {
        var start = new ProcessStartInfo("script", ["-qc", $"stty rows {Height} cols {Width}; '{LoggerBoxCommand.Executable}' watch --port '{port}' --sheet '{sheet}'", "/dev/null"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        start.Environment["TERM"] = "xterm";
        using Process terminal = Process.Start(start)!;
        char[][] cells = Empty();
        var waiting = Stopwatch.StartNew();
        var sent = new StringBuilder();
        char[] part = new char[4096];
        while (!Text(cells).Contains(shows, StringComparison.Ordinal) && waiting.Elapsed < Patience && await terminal.StandardOutput.ReadAsync(part) is int got and > 0)
        {
            cells = Drawn(sent.Append(part, 0, got).ToString());
        }

        await terminal.StandardInput.WriteAsync('q');
        await terminal.StandardInput.FlushAsync();
        await terminal.StandardOutput.ReadToEndAsync();
        await terminal.WaitForExitAsync();
        return Text(cells);
    }

    private static char[][] Drawn(string sent)
    {
        char[][] cells = Empty();
        foreach (Match run in Moved().Matches(sent))
        {
            char[] row = cells[Math.Clamp(Number(run, 1), 1, Height) - 1];
            int column = Math.Clamp(Number(run, 2), 1, Width) - 1;
            run.Groups[3].Value.AsSpan(0, Math.Min(run.Groups[3].Length, Width - column)).CopyTo(row.AsSpan(column));
        }

        return cells;
    }

    private static int Number(Match run, int group) => int.Parse(run.Groups[group].Value, CultureInfo.InvariantCulture);

    private static char[][] Empty() => [.. Enumerable.Range(0, Height).Select(_ => new string(' ', Width).ToCharArray())];

    private static string Text(IEnumerable<char[]> cells) => string.Join('\n', cells.Select(row => new string(row)));

    // ECMA-48, CUP: to line and column, then what is written there.
    [GeneratedRegex(@"\e\[(\d+);(\d+)H([^\e]*)")]
    private static partial Regex Moved();
}
