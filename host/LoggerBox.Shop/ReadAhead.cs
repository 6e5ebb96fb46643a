using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using Microsoft.AspNetCore.Http;

namespace LoggerBox.Shop;

/// <summary>
/// Reads the newest jobs while somebody still looks at the list, or at the browser's start: one of them is opened next, most likely. Whoever asks
/// for something meanwhile goes first.
/// </summary>
/// <param name="read">Reads, judges and writes a job's page, and keeps what it came by.</param>
internal sealed class ReadAhead(string archive, Action<ArchiveFile, string> read)
{
    public const int MostJobs = 24;

    // Half of what is kept: the other half stays with what people really opened.
    private const long MostSampleSets = LoadedSessions.MostSampleSets / 2;

    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(50);

    // Where nothing new has been run for a tenth of a second, the runtime begins to compile anew what runs often. A rest after each job lets the
    // reading of the next begin that, and not the page that somebody waits for.
    private static readonly TimeSpan Rest = TimeSpan.FromMilliseconds(150);

    // A page of live readings is answered as long as it is open.
    private const int MostPauses = 20;

    private int running;
    private int answering;

    public async Task Answer(HttpContext context, RequestDelegate next)
    {
        Interlocked.Increment(ref answering);
        try
        {
            await next(context);
        }
        finally
        {
            Interlocked.Decrement(ref answering);
        }
    }

    public void Begin()
    {
        if (Interlocked.Exchange(ref running, 1) == 0)
        {
            Task.Run(Read);
        }
    }

    private async Task Read()
    {
        try
        {
            using ArchiveFile file = ArchiveFile.OpenForReading(archive);
            foreach (string job in Newest(file))
            {
                for (int i = 0; i < MostPauses && Volatile.Read(ref answering) > 0; i++)
                {
                    await Task.Delay(Pause);
                }

                Read(file, job);
                await Task.Delay(Rest);
            }
        }
        catch (UserErrorException)
        {
            // Whoever opens the archive is told.
        }
        finally
        {
            Volatile.Write(ref running, 0);
        }
    }

    private void Read(ArchiveFile file, string job)
    {
        try
        {
            read(file, job);
        }
        catch (UserErrorException)
        {
            // Whoever opens the job is told.
        }
    }

    /// <summary>The newest first, as many as there is room for; the very newest in any case.</summary>
    public static IEnumerable<string> Newest(ArchiveFile file)
    {
        Dictionary<string, long> sets = file.Sessions.All().ToDictionary(session => session.Id, session => session.SampleSets);
        long all = 0;
        int jobs = 0;
        foreach (Job job in file.Jobs.All().Where(job => job.SessionIds.Count > 0).Reverse())
        {
            all += job.SessionIds.Sum(id => sets.GetValueOrDefault(id));
            if (jobs > 0 && (jobs == MostJobs || all > MostSampleSets))
            {
                yield break;
            }

            jobs++;
            yield return job.Id;
        }
    }
}
