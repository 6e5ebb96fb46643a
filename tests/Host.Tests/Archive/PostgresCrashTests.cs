using System;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Tests.Archive.Places;
using LoggerBox.Host.Tests.Sessions;
using Xunit;
using Xunit.Abstractions;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>
/// The server is stopped at once, as by a power cut, while sessions come in, and started again: each session is there wholly or not at all, each that
/// was said to be stored is there, and bringing them again is harmless.
/// </summary>
public class PostgresCrashTests(ITestOutputHelper notes)
{
    private const int Seed = 20_261_128;
    private const int Crashes = 6;
    private const int Sessions = 400;

    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.Zero);

    [PostgresFact]
    public async Task A_server_that_falls_while_sessions_come_in_keeps_whole_sessions_and_every_one_that_it_confirmed()
    {
        using PostgresServer server = new();
        string address = server.Address(server.NewDatabase());
        byte[][] coming = [.. Enumerable.Range(1, Sessions).Select(number => RecordedBytes.Session((uint)number, seed: number, sampleSets: 2000).ToArray())];
        Random random = new(Seed);
        int stored = 0;
        int cut = 0;
        for (int crash = 0; crash < Crashes; crash++)
        {
            Task<string> importing = Task.Factory.StartNew(() => AddUntilRefused(address, coming, ref stored), TaskCreationOptions.LongRunning);
            Thread.Sleep(random.Next(200, 600));
            server.Crash();
            string refusal = await importing;
            cut += refusal.Contains("was lost", StringComparison.Ordinal) ? 1 : 0;
            Assert.Matches("was lost|No PostgreSQL server answers|starting or stopping|^$", refusal);

            using ArchiveFile archive = ArchiveFile.Open(address);
            int there = archive.Sessions.All().Count;
            Assert.InRange(there, stored, stored + 1);
            Assert.All(archive.Sessions.All(), row => Assert.Equal(coming[row.Identity.SessionNumber - 1], archive.Sessions.Bytes(row.Id)));
        }

        notes.WriteLine($"seed {Seed}: {cut} of {Crashes} in the middle of an import, {stored} sessions stored");
        Assert.InRange(cut, Crashes / 2, Crashes);
        using ArchiveFile after = ArchiveFile.Open(address);
        int before = after.Sessions.All().Count;
        Assert.All(coming[..before], session => Assert.False(after.Sessions.Add(session, SessionOrigin.Fetched, "COM3", Now).IsNew));
        Assert.Equal(before, after.Sessions.All().Count);
        Assert.Empty(ArchiveCheck.Of(after));
    }

    /// <summary>Nothing where all came in.</summary>
    private static string AddUntilRefused(string address, byte[][] coming, ref int stored)
    {
        try
        {
            using ArchiveFile archive = ArchiveFile.Open(address);
            for (int number = stored; number < coming.Length; number++)
            {
                archive.Sessions.Add(coming[number], SessionOrigin.Fetched, "COM3", Now);
                stored = number + 1;
            }

            return "";
        }
        catch (UserErrorException refusal)
        {
            return refusal.Message;
        }
    }
}
