using System;
using System.Diagnostics;
using LoggerBox.Host;

namespace LoggerBox.Fuzz;

/// <summary>One target with one seed after the other, until enough was tried or something is wrong.</summary>
public static class Campaign
{
    // Far more than any input needs: a machine under load must not look like an input without end.
    private static readonly TimeSpan MostTime = TimeSpan.FromSeconds(20);

    public static CampaignResult Run(FuzzTarget target, TimeSpan time, int firstSeed)
    {
        Stopwatch clock = Stopwatch.StartNew();
        return Run(target, firstSeed, _ => clock.Elapsed < time);
    }

    /// <summary>So many inputs, whatever the time: the same ones at each run.</summary>
    public static CampaignResult Run(FuzzTarget target, int inputs, int firstSeed) => Run(target, firstSeed, tried => tried < inputs);

    private static CampaignResult Run(FuzzTarget target, int firstSeed, Func<int, bool> goesOn)
    {
        ArgumentNullException.ThrowIfNull(target);
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
        while (goesOn(tried));
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
            wrong = FuzzTarget.WrongSentence(refusal);
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
}

/// <param name="Refused">Of those tried, how many were refused with a sentence.</param>
/// <param name="Wrong">Null when nothing was found.</param>
public sealed record CampaignResult(int Tried, int Refused, string? Wrong);
