using System;
using System.Diagnostics;
using System.Threading.Tasks;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>`loggerbox simulate` in a process of its own, from its first line to its end.</summary>
internal sealed class SimulatedLogger : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly Process process;

    private SimulatedLogger(Process process, string port)
    {
        this.process = process;
        Port = port;
    }

    /// <summary>The first line, whole.</summary>
    public string Port { get; }

    public static SimulatedLogger Start(params string[] words)
    {
        Process process = LoggerBoxCommand.Start(["simulate", .. words]);
        Task<string?> first = process.StandardOutput.ReadLineAsync();
        if (!first.Wait(Patience) || first.Result is not string port)
        {
            process.Kill();
            throw new Xunit.Sdk.XunitException("simulate printed no port: " + process.StandardError.ReadToEnd());
        }

        return new SimulatedLogger(process, port);
    }

    /// <summary>Waits until it has sent so many bytes more, as Linux counts what a process writes.</summary>
    public bool TryWaitForBytes(long count)
    {
        long end = BytesWritten() + count;
        var clock = Stopwatch.StartNew();
        while (BytesWritten() < end && clock.Elapsed < Patience)
        {
            System.Threading.Thread.Sleep(2);
        }

        return BytesWritten() >= end;
    }

    /// <summary>As a battery clamp that slips off: no chance to tidy up.</summary>
    public void Kill()
    {
        process.Kill();
        process.WaitForExit();
    }

    /// <summary>The terminate signal: a run in the background of a script has Ctrl-C switched off, and its children too.</summary>
    public int Stop()
    {
        using Process interrupt = Process.Start("kill", ["-TERM", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        interrupt.WaitForExit();
        Assert.True(process.WaitForExit(Patience), "simulate did not end when told to");
        return process.ExitCode;
    }

    /// <summary>Kills it, where it still runs.</summary>
    public void Dispose()
    {
        if (!process.HasExited)
        {
            Kill();
        }

        process.Dispose();
    }

    private long BytesWritten()
    {
        string line = Array.Find(System.IO.File.ReadAllLines($"/proc/{process.Id}/io"), line => line.StartsWith("wchar:", StringComparison.Ordinal))!;
        return long.Parse(line["wchar:".Length..]);
    }
}
