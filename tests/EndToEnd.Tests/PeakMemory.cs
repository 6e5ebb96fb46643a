using System;
using System.Diagnostics;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>The most memory that a process ever had, looked at while it runs: once it has ended, nobody knows any more.</summary>
internal static class PeakMemory
{
    private const int MillisecondsBetweenLooks = 50;

    /// <summary>Bytes, as seen at the last look. Kills a process that does not end.</summary>
    public static long Of(Process process, TimeSpan patience, out bool ended)
    {
        long most = 0;
        Stopwatch clock = Stopwatch.StartNew();
        while (!process.WaitForExit(MillisecondsBetweenLooks) && clock.Elapsed < patience)
        {
            most = Math.Max(most, Look(process));
        }

        ended = process.HasExited;
        if (!ended)
        {
            process.Kill();
        }

        return most;
    }

    private static long Look(Process process)
    {
        try
        {
            process.Refresh();
            return process.PeakWorkingSet64;
        }
        catch (InvalidOperationException)
        {
            // It ended between the look and the question.
            return 0;
        }
    }
}
