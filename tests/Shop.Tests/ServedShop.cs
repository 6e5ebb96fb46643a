using System;
using System.Diagnostics;
using System.Globalization;
using System.Threading.Tasks;
using LoggerBox.EndToEnd.Tests;
using Xunit;

namespace LoggerBox.Shop.Tests;

/// <summary>`loggerbox serve` in a process of its own, from its first line to its end.</summary>
internal sealed class ServedShop : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly Process process;

    private ServedShop(Process process, string address)
    {
        this.process = process;
        Address = address;
    }

    /// <summary>The first line, whole.</summary>
    public string Address { get; }

    public static ServedShop Start(string folder, string[] words, params (string Name, string Value)[] environment)
    {
        var start = new ProcessStartInfo(LoggerBoxCommand.Executable, ["serve", .. words]) { RedirectStandardOutput = true, WorkingDirectory = folder };
        foreach ((string name, string value) in environment)
        {
            start.Environment[name] = value;
        }

        Process process = Process.Start(start)!;
        Task<string?> first = process.StandardOutput.ReadLineAsync();
        if (first.Wait(Patience) && first.Result is string address)
        {
            return new ServedShop(process, address);
        }

        process.Kill();
        throw new Xunit.Sdk.XunitException("serve printed no address");
    }

    /// <summary>What the program has used so far; other programs on the machine don't count.</summary>
    public TimeSpan ProcessorTime
    {
        get
        {
            process.Refresh();
            return process.TotalProcessorTime;
        }
    }

    /// <summary>Until it has had nothing to do for a while: what it reads ahead is read.</summary>
    public async Task WaitUntilIdle()
    {
        TimeSpan before;
        do
        {
            before = ProcessorTime;
            await Task.Delay(TimeSpan.FromSeconds(1));
        }
        while (ProcessorTime - before > TimeSpan.FromMilliseconds(20));
    }

    public int Stop()
    {
        using Process ask = Process.Start("kill", ["-TERM", process.Id.ToString(CultureInfo.InvariantCulture)]);
        ask.WaitForExit();
        Assert.True(process.WaitForExit(Patience), "serve did not end when told to");
        return process.ExitCode;
    }

    public void Dispose()
    {
        if (!process.HasExited)
        {
            process.Kill();
            process.WaitForExit();
        }

        process.Dispose();
    }
}
