using System;
using System.Linq;
using LoggerBox.Capture.Storage;
using LoggerBox.Host.Archive;
using LoggerBox.Link.Tests.Line;
using LoggerBox.Link.Tests.VirtualTime;
using Xunit;

namespace LoggerBox.Link.Tests;

/// <summary>Downloads over every kind of bad line, on virtual time: the real host, the real answers, a real archive.</summary>
public sealed class BadLineDownloadTests
{
    private const int SessionLength = 131_072;
    private const int SeedsOfALine = 20;

    private static readonly LineQuality Slow = LineQuality.Usb115200;
    private static readonly LineQuality Fast = LineQuality.Usb921600;

    /// <summary>Ten lines, 20 seeds each: 200 downloads.</summary>
    private static readonly (string Name, LineQuality Quality)[] Lines =
    [
        ("clean", Slow),
        ("clean and fast", Fast),
        ("bit errors 1e-6", Slow with { BitErrorRate = 1e-6 }),
        ("bit errors 1e-5", Fast with { BitErrorRate = 1e-5 }),
        ("bit errors 1e-4", Slow with { BitErrorRate = 1e-4 }),
        ("bit errors 5e-4", Fast with { BitErrorRate = 5e-4 }),
        ("lost bytes", Slow with { DropRate = 1e-3 }),
        ("doubled bytes", Slow with { DuplicateRate = 1e-3 }),
        ("bursts of noise", Slow with { BurstRate = 1e-4, BurstLength = 600 }),
        ("everything", Fast with { BitErrorRate = 1e-5, DropRate = 1e-4, DuplicateRate = 1e-4, BurstRate = 1e-5 }),
    ];

    public static TheoryData<string> Names => new(Lines.Select(line => line.Name));

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_seed_arrives_byte_for_byte_and_once(string name)
    {
        LineQuality quality = Lines.Single(line => line.Name == name).Quality;
        using ArchiveInMemory archive = new();
        for (int seed = 1; seed <= SeedsOfALine; seed++)
        {
            RecordLog log = RandomSession.Log(SessionLength, seed, bootCount: (ushort)seed);

            new VirtualDownload(archive.File, log, quality, seed).Run();

            byte[] arrived = archive.File.Sessions.Load($"S{seed}").Bytes;
            Assert.True(RandomSession.BytesOf(log).AsSpan().SequenceEqual(arrived), $"seed {seed}");
            Assert.True(log.Sessions[0].Confirmed, $"seed {seed}");
        }

        Assert.Equal(SeedsOfALine, archive.File.Sessions.All().Count);
    }

    [Fact]
    public void A_seed_gives_the_same_run_again()
    {
        LineQuality quality = Slow with { BitErrorRate = 1e-4 };
        Assert.Equal(TimeOf(quality, seed: 7), TimeOf(quality, seed: 7));
        Assert.NotEqual(TimeOf(quality, seed: 7), TimeOf(quality, seed: 8));
    }

    /// <summary>The figures of a real line are measured by tests/Benchmarks; on virtual time they are exact, so they can be held.</summary>
    [Theory]
    [InlineData(115_200, 0, 256, 0.97)]
    [InlineData(921_600, 0, 256, 0.97)]
    [InlineData(115_200, 0, 32_768, 0.97)]
    [InlineData(921_600, 0, 32_768, 0.97)]
    [InlineData(115_200, 1e-5, 256, 0.90)]
    [InlineData(921_600, 1e-5, 256, 0.90)]
    [InlineData(115_200, 1e-4, 256, 0.75)]
    [InlineData(921_600, 1e-4, 256, 0.75)]
    public void Each_of_ten_seeds_fills_the_line(int baud, double bitErrorRate, int transmitBuffer, double leastShare)
    {
        LineQuality quality = (baud == Slow.Baud ? Slow : Fast) with { BitErrorRate = bitErrorRate, TransmitBuffer = transmitBuffer };
        double[] shares = [.. Enumerable.Range(1, 10).Select(seed => SessionLength / quality.BytesPerSecond / TimeOf(quality, seed).TotalSeconds)];
        Assert.True(shares.Min() >= leastShare, string.Join(' ', shares.Select(share => $"{share:P2}")));
    }

    /// <summary>Of these seeds the answer to the greeting or to the list is hit, some twice: waits for it would cost a fast line a tenth and more.</summary>
    [Theory]
    [InlineData(3000, 1e-5, 0.92)]
    [InlineData(3000, 1e-4, 0.75)]
    [InlineData(35, 1e-4, 0.75)]
    [InlineData(37, 1e-4, 0.75)]
    public void An_answer_that_comes_damaged_is_asked_for_again_at_once(int seed, double bitErrorRate, double leastShare)
    {
        LineQuality quality = Fast with { BitErrorRate = bitErrorRate, TransmitBuffer = 4096 };
        Assert.InRange(SessionLength / quality.BytesPerSecond / TimeOf(quality, seed).TotalSeconds, leastShare, 1);
    }

    private static TimeSpan TimeOf(LineQuality quality, int seed)
    {
        using ArchiveInMemory archive = new();
        VirtualDownload download = new(archive.File, RandomSession.Log(SessionLength, seed), quality, seed);
        download.Run();
        return download.Clock.Elapsed;
    }
}
