using System;
using System.Diagnostics;
using LoggerBox.Host;

namespace LoggerBox.Fuzz;

/// <summary>One target with one seed after the other, until the time is over or something is wrong.</summary>
public static class Campaign
{
    // Far more than any input needs: a machine under load must not look like an input without end.
    private static readonly TimeSpan MostTime = TimeSpan.FromSeconds(5);

    public static CampaignResult Run(FuzzTarget target, TimeSpan time, int firstSeed)
    {
        ArgumentNullException.ThrowIfNull(target);
        Stopwatch clock = Stopwatch.StartNew();
        int tried = 0;
        int refused = 0;
        do
        {
            int seed = unchecked(firstSeed + tried++);
            if (Wrong(target, seed, ref refused) is string wrong)
            {
                return new CampaignResult(tried, refused, $"seed {seed}: {wrong}");
            }
        }
        while (clock.Elapsed < time);
        return new CampaignResult(tried, refused, null);
    }

    private static string? Wrong(FuzzTarget target, int seed, ref int refused)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        long start = Stopwatch.GetTimestamp();
        string? wrong = null;
        try
        {
            wrong = target.Try(new Random(seed));
        }
        catch (UserErrorException refusal)
        {
            refused++;
            wrong = IsSentence(refusal.Message) ? null : $"a refusal that is no sentence: {refusal.Message}";
        }
#pragma warning disable CA1031 // Whatever comes out is what was looked for.
        catch (Exception error)
#pragma warning restore CA1031
        {
            wrong = error.ToString();
        }

        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        TimeSpan taken = Stopwatch.GetElapsedTime(start);
        return wrong
            ?? (allocated > target.MostBytes ? $"{allocated:N0} bytes allocated, more than {target.MostBytes:N0}" : null)
            ?? (taken > MostTime ? $"it took {taken.TotalSeconds:F1} s" : null);
    }

    private static bool IsSentence(string message) =>
        message.Length > 10 && message[^1] is '.' or '?' && !message.Contains("   at ", StringComparison.Ordinal);
}

/// <param name="Refused">Of those tried, how many were refused with a sentence.</param>
/// <param name="Wrong">Null when nothing was found.</param>
public sealed record CampaignResult(int Tried, int Refused, string? Wrong);
