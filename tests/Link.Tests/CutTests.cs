using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture.Storage;
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
    private const long Second = 1_000_000_000;

    private static readonly LinkTiming ShortPatience = LinkTiming.Default with { Answer = TimeSpan.FromSeconds(1), Silence = TimeSpan.FromSeconds(1) };

    [Fact]
    public void Cut_at_every_97th_byte_and_resumed_one_frame_at_most_is_sent_twice()
    {
        long wireLength = WireLength();
        using ArchiveInMemory archive = new();
        ushort visit = 0;
        for (long cut = 1; cut < wireLength; cut += BytesBetweenCuts)
        {
            Resume(archive.File, ++visit, cut);
        }

        Assert.Equal(visit, archive.File.Sessions.All().Count);
        Assert.InRange(visit, 340, 360);
    }

    private static void Resume(ArchiveFile archive, ushort visit, long cut)
    {
        RecordLog log = RandomSession.Log(SessionLength, visit, bootCount: visit);
        VirtualDownload download = new(archive, log, LineQuality.Usb921600, seed: visit);
        download.Line.ToHost.CutBefore = cut;
        Assert.Throws<UserErrorException>(() => download.Run(ShortPatience));

        // The plug is back; what the logger sent meanwhile went nowhere.
        download.Line.PassUntil(download.Clock.Now + Second);
        long plugged = download.Line.ToHost.Sent;
        download.Line.ToHost.CutBefore = long.MaxValue;
        download.Run();

        List<SentFrame> carried = [.. download.Line.Frames.Where(frame => frame.End <= cut || frame.Start >= plugged)];
        Assert.Equal(SessionLength, carried.Sum(frame => frame.Payload.Length));
        Assert.Equal([new ByteRange(0, SessionLength)], Union(carried));
        Assert.InRange(download.Line.Frames.Count(frame => frame.Start < cut && frame.End > cut), 0, 1);
        Assert.True(RandomSession.BytesOf(log).AsSpan().SequenceEqual(archive.Sessions.Load($"S{visit}").Bytes), $"cut before byte {cut}");
        Assert.True(log.Sessions[0].Confirmed, $"cut before byte {cut}");
    }

    private static IReadOnlyList<ByteRange> Union(List<SentFrame> frames)
    {
        ByteRanges union = new();
        frames.ForEach(frame => union.Add(frame.Payload));
        return union.All;
    }

    /// <summary>Bytes that a whole download sends, up to the last frame of the session.</summary>
    private static long WireLength()
    {
        using ArchiveInMemory archive = new();
        VirtualDownload whole = new(archive.File, RandomSession.Log(SessionLength, 1), LineQuality.Usb921600, seed: 1);
        whole.Run();
        return whole.Line.Frames[^1].End;
    }
}
