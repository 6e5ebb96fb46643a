using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using LoggerBox.Host.Archive;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>Cards as the virtual logger writes them, and what came of them in an archive.</summary>
internal static class RecordedCard
{
    private static readonly ConcurrentDictionary<string, Lazy<byte[]>> Logs = new();

    /// <summary>One session for each seed, in a folder as a card has it. The same seeds give the same card, so each is recorded once.</summary>
    public static void Make(string folder, params int[] seeds)
    {
        Directory.CreateDirectory(folder);
        byte[] log = Logs.GetOrAdd(string.Join(' ', seeds), _ => new Lazy<byte[]>(() => Record(seeds))).Value;
        File.WriteAllBytes(Path.Combine(folder, "sessions.log"), log);
    }

    /// <summary>Fetches all of a card's sessions by cable into an archive of their own.</summary>
    public static IReadOnlyList<byte[]> Cable(string folder, string archive)
    {
        using var logger = SimulatedLogger.Start("--store", folder, "--tcp");
        LoggerBoxCommand.Run("fetch", "--port", logger.Port, "--archive", archive).Expect(0);
        return Sessions(archive);
    }

    public static IReadOnlyList<ArchivedSession> Rows(string archive)
    {
        using ArchiveFile file = ArchiveFile.OpenExisting(archive);
        return file.Sessions.All();
    }

    /// <summary>The bytes of each whole session.</summary>
    public static IReadOnlyList<byte[]> Sessions(string archive)
    {
        using ArchiveFile file = ArchiveFile.OpenExisting(archive);
        return [.. file.Sessions.All().Select(row => file.Sessions.Bytes(row.Id))];
    }

    /// <summary>Until some of a session, and not all, has been stored.</summary>
    public static void WaitForHalf(string archive)
    {
        var clock = Stopwatch.StartNew();
        while (!File.Exists(archive) || !Rows(archive).Any(row => !row.Complete && row.Received > 0))
        {
            Assert.True(clock.Elapsed.TotalSeconds < 20, "nothing of a session came");
            Thread.Sleep(50);
        }
    }

    /// <summary>Gives every record the next version, as a later program would write it.</summary>
    public static void RaiseVersion(string path)
    {
        byte[] card = File.ReadAllBytes(path);
        for (int at = 0; at + RecordFormat.HeaderLength < card.Length; at++)
        {
            if (card[at] == RecordFormat.FirstMark && card[at + 1] == RecordFormat.SecondMark && card[at + 3] == RecordFormat.Version)
            {
                card[at + 3]++;
            }
        }

        File.WriteAllBytes(path, card);
    }

    private static byte[] Record(int[] seeds)
    {
        using var bench = new Workbench();
        foreach (int seed in seeds)
        {
            SimulatedLogger.Start("--store", Path.GetDirectoryName(bench.At("x"))!, "--seed", seed.ToString(CultureInfo.InvariantCulture), "--tcp").Dispose();
        }

        return File.ReadAllBytes(bench.At("sessions.log"));
    }
}
