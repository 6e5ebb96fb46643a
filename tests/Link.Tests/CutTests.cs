using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Link;
using LoggerBox.Host.Sessions;
using LoggerBox.Link.Tests.Line;
using LoggerBox.Link.Tests.VirtualTime;
using LoggerBox.Protocol.Link;
using Xunit;

namespace LoggerBox.Link.Tests;

public sealed class CutTests
{
    private const int SessionLength = 32_768;
    private const int BytesBetweenCuts = 97;
    private const int BytesBetweenRequestCuts = 7;
    private const long Second = 1_000_000_000;

    private static readonly LinkTiming ShortPatience = LinkTiming.Default with { Answer = TimeSpan.FromSeconds(1), Silence = TimeSpan.FromSeconds(1) };

    /// <summary>The most that a host has on its way at once: what a logger can send into a dead line, which it can't know to be dead.</summary>
    private const int AskedAhead = 18 * 1024;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Cut_at_every_97th_byte_and_resumed_one_frame_at_most_is_sent_twice(bool bothWays)
    {
        long wireLength = WholeDownload().Frames[^1].End;
        using ArchiveInMemory archive = new();
        ushort visit = 0;
        for (long cut = 1; cut < wireLength; cut += BytesBetweenCuts)
        {
            VirtualDownload download = Download(archive.File, ++visit);
            download.Line.ToHost.CutBefore = cut;
            download.Line.ToLogger.CutWith = bothWays ? download.Line.ToHost : null;
            long plugged = Resume(download);

            List<SentFrame> frames = [.. download.Line.Frames];
            AssertArrivedOnce(archive.File, download, visit, frames.Where(frame => frame.End <= cut || frame.Start >= plugged), $"cut before byte {cut}");
            Assert.InRange(frames.Count(frame => frame.Start < cut && frame.End > cut), 0, 1);
            Assert.InRange(frames.Where(frame => frame.End > cut && frame.Start < plugged).Sum(frame => frame.Payload.Length), 0, AskedAhead);
        }

        Assert.Equal(visit, archive.File.Sessions.All().Count);
        Assert.InRange(visit, 340, 360);
    }

    [Fact]
    public void Cut_at_every_7th_byte_of_the_requests_and_resumed_no_frame_is_sent_twice()
    {
        long wireLength = WholeDownload().ToLogger.Sent;
        using ArchiveInMemory archive = new();
        ushort visit = 0;
        for (long cut = 1; cut < wireLength; cut += BytesBetweenRequestCuts)
        {
            VirtualDownload download = Download(archive.File, ++visit);
            download.Line.ToLogger.CutBefore = cut;
            Resume(download);
            AssertArrivedOnce(archive.File, download, visit, download.Line.Frames, $"cut before byte {cut} of the requests");
        }

        Assert.Equal(visit, archive.File.Sessions.All().Count);
        Assert.InRange(visit, 50, 100);
    }

    private static VirtualDownload Download(ArchiveFile archive, ushort visit) =>
        new(archive, RandomSession.Log(SessionLength, visit, bootCount: visit), LineQuality.Usb921600, seed: visit);

    /// <summary>Runs into the cut, plugs in again and runs once more. Returns the byte towards the host with which the line was whole again.</summary>
    private static long Resume(VirtualDownload download)
    {
        Assert.Throws<UserErrorException>(() => download.Run(ShortPatience));

        // The plug is back; what the logger sent meanwhile went nowhere.
        download.Line.PassUntil(download.Clock.Now + Second);
        long plugged = download.Line.ToHost.Sent;
        download.Line.ToHost.CutBefore = long.MaxValue;
        download.Line.ToLogger.CutBefore = long.MaxValue;
        download.Run();
        return plugged;
    }

    private static void AssertArrivedOnce(ArchiveFile archive, VirtualDownload download, int visit, IEnumerable<SentFrame> carried, string where)
    {
        List<SentFrame> frames = [.. carried];
        Assert.Equal(SessionLength, frames.Sum(frame => frame.Payload.Length));
        Assert.Equal([new ByteRange(0, SessionLength)], Union(frames));
        Assert.True(RandomSession.BytesOf(download.Log).AsSpan().SequenceEqual(archive.Sessions.Load($"S{visit}").Bytes), where);
        Assert.True(download.Log.Sessions[0].Confirmed, where);
    }

    private static IReadOnlyList<ByteRange> Union(List<SentFrame> frames)
    {
        ByteRanges union = new();
        frames.ForEach(frame => union.Add(frame.Payload));
        return union.All;
    }

    private static VirtualLine WholeDownload()
    {
        using ArchiveInMemory archive = new();
        VirtualDownload whole = Download(archive.File, 1);
        whole.Run();
        return whole.Line;
    }
}
