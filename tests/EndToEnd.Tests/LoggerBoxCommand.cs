using System;
using System.Diagnostics;
using System.IO;
using System.Threading.Tasks;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>What one call of the program gave.</summary>
internal sealed record CommandResult(int Status, string Out, string Error)
{
    public CommandResult Expect(int status)
    {
        Assert.True(Status == status, $"exit {Status}, expected {status}\n{Error}\n{Out}");
        return this;
    }

    /// <summary>A refusal: the status, one sentence, no trace of the program's inside, and each of the words that say where.</summary>
    public void Refused(int status, params string[] words)
    {
        Expect(status);
        string sentence = Error.TrimEnd('\n');
        Assert.DoesNotContain('\n', sentence);
        Assert.DoesNotContain("   at ", Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", Error, StringComparison.Ordinal);
        Assert.Matches(@"[.?]$", sentence);
        foreach (string word in words)
        {
            Assert.Contains(word, sentence, StringComparison.Ordinal);
        }
    }
}

/// <summary>The built program as its users start it: a process of its own. LOGGERBOX_PROGRAM names another, as an unpacked archive's.</summary>
internal static class LoggerBoxCommand
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    public static string Executable { get; } = Environment.GetEnvironmentVariable("LOGGERBOX_PROGRAM") ?? Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "loggerbox.exe" : "loggerbox");

    public static CommandResult Run(params string[] words) => RunIn("", words);

    public static CommandResult RunIn(string folder, params string[] words)
    {
        using Process process = StartIn(folder, words);
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> error = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(Patience))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail($"loggerbox {string.Join(' ', words)} did not end in {Patience.TotalSeconds} s");
        }

        return new CommandResult(process.ExitCode, output.Result, error.Result);
    }

    public static Process Start(params string[] words) => StartIn("", words);

    public static Process StartIn(string folder, params string[] words)
    {
        var start = new ProcessStartInfo(Executable, words)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            WorkingDirectory = folder,
        };
        start.Environment["DOTNET_NOLOGO"] = "1";
        Process process = Process.Start(start)!;
        process.StandardInput.Close();
        return process;
    }
}
