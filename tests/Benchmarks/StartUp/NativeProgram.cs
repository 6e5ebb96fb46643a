using System;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Threading.Tasks;

namespace LoggerBox.Benchmarks.StartUp;

/// <summary>The program as packaging/make compiles it, each run a process of its own.</summary>
internal sealed class NativeProgram
{
    private readonly string path;

    private NativeProgram(string path) => this.path = path;

    /// <summary>Unpacked, what a shop gets: pages and examples too.</summary>
    public long FolderBytes => new DirectoryInfo(Path.GetDirectoryName(path)!).EnumerateFiles("*", SearchOption.AllDirectories).Sum(file => file.Length);

    /// <summary>The one that was made last, or that LOGGERBOX_NATIVE names; null where there is none.</summary>
    public static NativeProgram? Find()
    {
        string root = AppContext.BaseDirectory[..AppContext.BaseDirectory.IndexOf(Path.Combine("tests", "Benchmarks"), StringComparison.Ordinal)];
        DirectoryInfo made = new(Path.Combine(root, "out"));
        string? found = Environment.GetEnvironmentVariable("LOGGERBOX_NATIVE")
            ?? (made.Exists ? made.EnumerateFiles("loggerbox", SearchOption.AllDirectories).OrderBy(file => file.LastWriteTimeUtc).LastOrDefault()?.FullName : null);
        return found is not null && File.Exists(found) ? new NativeProgram(found) : null;
    }

    public ProgramRun Run(params string[] words) => ProgramRun.Of(path, words);

    /// <summary>One that goes on until it is ended; what it says first, and how long that took.</summary>
    public (Process Running, string Line, double Seconds) Begin(params string[] words)
    {
        Stopwatch watch = Stopwatch.StartNew();
        Process running = Process.Start(new ProcessStartInfo(path, words) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task.Run(running.StandardError.ReadToEnd);
        string line = running.StandardOutput.ReadLine() ?? throw new InvalidOperationException($"{string.Join(' ', words)} said nothing.");
        double seconds = watch.Elapsed.TotalSeconds;
        Task.Run(running.StandardOutput.ReadToEnd);
        return (running, line, seconds);
    }
}
