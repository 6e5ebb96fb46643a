using System;
using System.Diagnostics;
using System.IO;
using System.Text;
using System.Threading.Tasks;
using Xunit;

namespace LoggerBox.EndToEnd.Tests.Watching;

/// <summary>
/// `loggerbox watch` in a pseudo-terminal of 80 by 24, with a keyboard. What the terminal was set to is written down before and after:
/// `script` gives the terminal, `stty` says how it is set.
/// </summary>
internal sealed class ScreenInATerminal : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly Workbench bench = new();
    private readonly Process script;
    private readonly StringBuilder shown = new();

    public ScreenInATerminal(params string[] words)
    {
        // The trap keeps the shell, not its child, from ending with Ctrl-C; a test that runs in the background has Ctrl-C switched off.
        string command = bench.Write(
            "run.sh",
            $"""
            trap : INT
            stty rows 24 cols 80
            stty -g > '{bench.At("before")}'
            '{LoggerBoxCommand.Executable}' {string.Join(' ', words)} 2> '{bench.At("error")}'
            echo $? > '{bench.At("status")}'
            stty -g > '{bench.At("after")}'
            """);
        var start = new ProcessStartInfo("env", ["--default-signal=INT", "script", "-qc", "sh " + command, "/dev/null"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        start.Environment["TERM"] = "xterm";
        script = Process.Start(start)!;
        _ = Task.Run(Read);
    }

    public string Status => File.ReadAllText(bench.At("status")).Trim();

    public string Error => File.ReadAllText(bench.At("error"));

    public string SettingsBefore => File.ReadAllText(bench.At("before"));

    public string SettingsAfter => File.ReadAllText(bench.At("after"));

    public string Sent
    {
        get
        {
            lock (shown)
            {
                return shown.ToString();
            }
        }
    }

    public void WaitFor(string text)
    {
        var waiting = Stopwatch.StartNew();
        while (!Sent.Contains(text, StringComparison.Ordinal))
        {
            Assert.True(waiting.Elapsed < Patience, $"'{text}' was not shown: {Sent}");
            System.Threading.Thread.Sleep(20);
        }
    }

    public void Press(string keys)
    {
        script.StandardInput.Write(keys);
        script.StandardInput.Flush();
    }

    public void WaitForItsEnd() => Assert.True(script.WaitForExit(Patience), "watch did not end: " + Sent);

    public void Dispose()
    {
        if (!script.HasExited)
        {
            script.Kill(entireProcessTree: true);
            script.WaitForExit();
        }

        script.Dispose();
        bench.Dispose();
    }

    private async Task Read()
    {
        char[] part = new char[4096];
        while (await script.StandardOutput.ReadAsync(part) is int got and > 0)
        {
            lock (shown)
            {
                shown.Append(part, 0, got);
            }
        }
    }
}
