using System;
using System.Diagnostics;
using System.IO;
using System.Linq;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>A session over a slow cable: how far it is, in a pseudo-terminal and in a pipe, and never on standard output.</summary>
public class FetchProgressTests
{
    private const string SlowCable = "38400";

    [LinuxFact]
    public void On_a_terminal_a_line_is_drawn_again_and_gone_at_the_end()
    {
        using var bench = new Workbench();
        using SimulatedLogger logger = SimulatedLogger.Start("--baud", SlowCable);
        var start = new ProcessStartInfo("script", ["-qec", $"stty cols 80; '{LoggerBoxCommand.Executable}' fetch --port {logger.Port} --archive '{bench.Archive}' > '{bench.At("out")}'", "/dev/null"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        start.Environment["TERM"] = "xterm";
        using Process script = Process.Start(start)!;
        string shown = script.StandardOutput.ReadToEnd();
        script.WaitForExit();
        Assert.Equal(0, script.ExitCode);

        string[] drawings = shown.Split("\r\u001b[K");
        Assert.True(drawings.Length > 5, shown);

        // Behind the last wiping comes what is said when it is done: that the clock was set.
        Assert.StartsWith("The clock of the logger", drawings[^1], StringComparison.Ordinal);
        Assert.All(drawings[1..^1].Where(drawing => drawing != "Working: fetch"), drawing => Assert.Matches(@"^Session \d+: \d+ of \d+ kB, \d+\.\d kB/s, \d+ s left$", drawing));
        Assert.DoesNotContain("kB/s", File.ReadAllText(bench.At("out")), StringComparison.Ordinal);
    }

    [Fact]
    public void In_a_pipe_there_are_a_few_plain_lines()
    {
        using var bench = new Workbench();
        using SimulatedLogger logger = SimulatedLogger.Start("--baud", SlowCable);
        var took = Stopwatch.StartNew();
        CommandResult result = LoggerBoxCommand.Run("fetch", "--port", logger.Port, "--archive", bench.Archive).Expect(0);
        string[] lines = [.. result.Error.Split('\n').Where(line => line.Contains("kB/s", StringComparison.Ordinal))];
        Assert.InRange(lines.Length, 1, (int)(took.Elapsed.TotalSeconds / 5) + 1);
        Assert.DoesNotContain('\u001b', result.Error);
        Assert.DoesNotContain("kB/s", result.Out, StringComparison.Ordinal);
    }
}
