using System;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;

namespace LoggerBox.Benchmarks.StartUp;

/// <summary>One run of a program.</summary>
/// <param name="FirstByte">Seconds until it had said anything on standard output; those of the whole run where it said nothing.</param>
/// <param name="PeakKilobytes">Most memory that it had at once, as the system counts it.</param>
internal sealed record ProgramRun(double FirstByte, double Seconds, long PeakKilobytes, string Output, string Errors, int Status)
{
    public static ProgramRun Of(string program, params string[] words)
    {
        Stopwatch watch = Stopwatch.StartNew();
        using Process running = Process.Start(new ProcessStartInfo(program, words) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<long> peak = Task.Run(() => Peak(running));
        int first = running.StandardOutput.Read();
        double firstByte = watch.Elapsed.TotalSeconds;
        Task<string> output = running.StandardOutput.ReadToEndAsync();
        Task<string> errors = running.StandardError.ReadToEndAsync();
        running.WaitForExit();
        double seconds = watch.Elapsed.TotalSeconds;
        return new ProgramRun(firstByte, seconds, peak.Result, (first < 0 ? "" : ((char)first).ToString()) + output.Result, errors.Result, running.ExitCode);
    }

    // Counted by the system from the start on, so that the last look sees the highest of all but the last milliseconds.
    private static long Peak(Process running)
    {
        long peak = 0;
        while (!running.HasExited)
        {
            peak = Math.Max(peak, Peak(running.Id));
            Thread.Sleep(1);
        }

        return peak;
    }

    private static long Peak(int process)
    {
        try
        {
            string? line = File.ReadLines($"/proc/{process}/status").FirstOrDefault(line => line.StartsWith("VmHWM:", StringComparison.Ordinal));
            return line is null ? 0 : long.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture);
        }
        catch (IOException)
        {
            return 0;
        }
    }
}
