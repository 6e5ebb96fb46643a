using System;
using System.Diagnostics;
using System.IO;
using System.Text;
using System.Threading.Tasks;
using Xunit;

namespace LoggerBox.EndToEnd.Tests.Calibration;

/// <summary>A virtual logger whose transducers hang on a bench pump, in a process of its own, and a hand on the pump.</summary>
internal sealed class BenchLogger : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(120);

    private readonly string gauge;
    private readonly SimulatedLogger logger;

    public BenchLogger(Workbench bench, string pressure = "0", params string[] words)
    {
        gauge = bench.Write("gauge", pressure);
        logger = SimulatedLogger.Start(["--bench", gauge, .. words]);
    }

    public string Port => logger.Port;

    /// <summary>Written aside and moved over, so that nobody reads half of it.</summary>
    public void Set(string pressure)
    {
        File.WriteAllText(gauge + ".new", pressure);
        File.Move(gauge + ".new", gauge, overwrite: true);
    }

    public void Kill() => logger.Kill();

    /// <summary>Runs `calibrate` and sets each pressure as it is asked for.</summary>
    /// <param name="hand">Gets each line that is printed; null: sets what it waits for.</param>
    public async Task<CommandResult> Calibrate(string[] words, Action<string>? hand = null)
    {
        using Process process = LoggerBoxCommand.Start(["calibrate", "--port", Port, .. words]);
        Task<string> error = process.StandardError.ReadToEndAsync();
        StringBuilder said = new();
        while (await process.StandardOutput.ReadLineAsync().WaitAsync(Patience) is string line)
        {
            said.Append(line).Append('\n');
            (hand ?? Follow)(line);
        }

        Assert.True(process.WaitForExit(Patience), "calibrate did not end: " + said);
        return new CommandResult(process.ExitCode, said.ToString(), await error);
    }

    public void Dispose() => logger.Dispose();

    private void Follow(string line)
    {
        if (line.Contains("waiting for zero", StringComparison.Ordinal))
        {
            Set("0");
        }
        else if (line.IndexOf("waiting for ", StringComparison.Ordinal) is >= 0 and int at)
        {
            string[] asked = line[(at + "waiting for ".Length)..].Split(' ');
            Set(asked[0] + asked[1]);
        }
    }
}
