using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using LoggerBox.TruckSimulator.Demo;
using Xunit;

namespace LoggerBox.EndToEnd.Tests.Watching;

/// <summary>`watch` beside a virtual logger that records in real time in a process of its own.</summary>
public sealed class WatchTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly Workbench bench = new();

    public void Dispose() => bench.Dispose();

    [LinuxFact]
    public void The_screen_shows_readings_and_q_puts_the_terminal_back()
    {
        using var logger = SimulatedLogger.Start("--speed", "real");
        using var screen = new ScreenInATerminal("watch", "--port", logger.Port, "--sheet", bench.Write("sample.toml", SampleSheet.Text()));
        screen.WaitFor("Engine speed, rpm");
        screen.WaitFor("Engine off, no pressure");
        Assert.Contains("limits of sample.toml", screen.Sent, StringComparison.Ordinal);
        screen.Press("xq");
        AssertPutBack(screen);
    }

    [LinuxFact]
    public void Ctrl_C_ends_it_in_order()
    {
        using var logger = SimulatedLogger.Start("--speed", "real", "--tcp");
        using var screen = new ScreenInATerminal("watch", "--port", logger.Port);
        screen.WaitFor("Converter, kPa");
        screen.Press("\x03");
        AssertPutBack(screen);
    }

    [Fact]
    public async Task Without_a_terminal_it_prints_plain_lines_and_a_cut_line_is_told_and_found_again()
    {
        string link = bench.At("port");
        SimulatedLogger logger = SimulatedLogger.Start("--speed", "real", "--link", link);
        using Process watch = LoggerBoxCommand.Start("watch", "--port", link);
        Task<string> error = watch.StandardError.ReadToEndAsync();
        Assert.All(await Lines(watch, 3), line => Assert.Matches(@"^ +\d+\.\d s  Engine speed (–|\d+) rpm  Main -?\d+ kPa  Clutch -?\d+ kPa  Converter -?\d+ kPa  neutral", line));

        File.Delete(link);
        logger.Dispose();
        using SimulatedLogger restarted = SimulatedLogger.Start("--speed", "real", "--link", link);
        Assert.Contains("neutral", (await Lines(watch, 2))[1], StringComparison.Ordinal);

        End(watch);
        Assert.Equal(0, watch.ExitCode);
        Assert.Matches($@"^The line on {link} was cut: it may take 10 s to come back\.\n$", await error);
    }

    [Fact]
    public async Task Json_gives_an_object_a_line_in_the_unit_that_was_asked_for()
    {
        using var logger = SimulatedLogger.Start("--speed", "real", "--tcp");
        using Process watch = LoggerBoxCommand.Start("watch", "--port", logger.Port, "--json", "--unit", "bar");
        foreach (string line in await Lines(watch, 2))
        {
            JsonElement moment = JsonDocument.Parse(line).RootElement;
            Assert.Equal(("bar", "N"), (moment.GetProperty("unit").GetString(), moment.GetProperty("gear").GetString()));
            Assert.InRange(moment.GetProperty("main").GetProperty("value").GetDouble(), -0.1, 0.1);
            Assert.Equal(JsonValueKind.Null, moment.GetProperty("main").GetProperty("min").ValueKind);
        }

        End(watch);
        Assert.Equal(0, watch.ExitCode);
    }

    [Fact]
    public void What_is_no_logger_is_refused_in_a_sentence()
    {
        LoggerBoxCommand.Run("watch", "--port", "tcp:127.0.0.1:1").Refused(1, "tcp:127.0.0.1:1");
        LoggerBoxCommand.Run("watch").Refused(2, "--port");
    }

    private static void AssertPutBack(ScreenInATerminal screen)
    {
        screen.WaitForItsEnd();
        Assert.Equal("0", screen.Status);
        Assert.Equal("", screen.Error);
        Assert.Equal(screen.SettingsBefore, screen.SettingsAfter);

        // The page of its own (xterm's 1049) and the hidden cursor are taken back last, the cursor keys' mode (DECCKM, DECKPAM) too.
        Assert.Contains("\e[?1049h", screen.Sent, StringComparison.Ordinal);
        Assert.EndsWith("\e[?1l\e>\e[?25h\e[?1049l", screen.Sent.TrimEnd('\r', '\n'), StringComparison.Ordinal);
    }

    private static async Task<List<string>> Lines(Process watch, int count)
    {
        List<string> lines = [];
        while (lines.Count < count)
        {
            string? line = await watch.StandardOutput.ReadLineAsync().WaitAsync(Patience);
            Assert.True(line is not null, "watch ended: " + lines.LastOrDefault());
            lines.Add(line);
        }

        return lines;
    }

    private static void End(Process watch)
    {
        using Process told = Process.Start("kill", ["-TERM", watch.Id.ToString()]);
        told.WaitForExit();
        Assert.True(watch.WaitForExit(Patience), "watch did not end when told to");
    }
}
