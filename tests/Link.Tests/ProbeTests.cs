using System;
using System.Linq;
using LoggerBox.Capture.Link;
using LoggerBox.Capture.Storage;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Link;
using LoggerBox.Link.Tests.Line;
using LoggerBox.Link.Tests.VirtualTime;
using Xunit;

namespace LoggerBox.Link.Tests;

/// <summary>A line that is silent in the middle of a download: because bytes are late, or because they are gone.</summary>
public sealed class ProbeTests
{
    private const int SessionLength = 65_536;
    private const long Millisecond = 1_000_000;
    private const long Silent = 300 * Millisecond;

    private readonly VirtualClock clock = new();

    [Fact]
    public void A_logger_that_pauses_sends_nothing_twice()
    {
        VirtualLine line = Download(_ => clock.Now is > Silent and < Silent + (700 * Millisecond));
        Assert.Equal(SessionLength, line.Frames.Sum(frame => frame.Payload.Length));
        Assert.InRange(clock.Now, Silent + (700 * Millisecond), 2000 * Millisecond);
    }

    [Fact]
    public void Requests_that_all_got_lost_are_sent_again_at_the_next_silence()
    {
        VirtualLine line = Download(line =>
        {
            line.ToLogger.CutBefore = clock.Now is > Silent and < Silent + (250 * Millisecond) ? 0 : long.MaxValue;
            return false;
        });
        Assert.Equal(SessionLength, line.Frames.Sum(frame => frame.Payload.Length));
        Assert.InRange(clock.Now, Silent + (250 * Millisecond), 2000 * Millisecond);
    }

    /// <param name="isPaused">Whether the logger does nothing just now; asked at each look.</param>
    private VirtualLine Download(Func<VirtualLine, bool> isPaused)
    {
        RecordLog log = RandomSession.Log(SessionLength, seed: 3);
        VirtualLine? line = null;
        line = new VirtualLine(clock, LineQuality.Usb921600, seed: 3, port =>
        {
            LinkAnswers answers = new(log, port, RandomSession.LoggerId, bootCount: 1);
            return () => !isPaused(line!) && answers.Step(clock.Now / 1000, 0);
        });
        using ArchiveInMemory archive = new();
        new SessionDownload(new LoggerConnection(HostLine.Over(line, "virtual"), null, clock), archive.File, SessionOrigin.Fetched, DateTimeOffset.UnixEpoch).Run();
        Assert.True(RandomSession.BytesOf(log).AsSpan().SequenceEqual(archive.File.Sessions.Load("S1").Bytes));
        return line;
    }
}
