using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using LoggerBox.Capture.Link;
using LoggerBox.Capture.Storage;
using LoggerBox.Host.Link;
using LoggerBox.Link.Tests.Line;
using LoggerBox.Link.Tests.VirtualTime;
using LoggerBox.Protocol.Link;
using Xunit;

namespace LoggerBox.Link.Tests;

/// <summary>Live readings over a line on virtual time; the logger counts the readings that it tells.</summary>
public sealed class LiveWatchTests
{
    private readonly VirtualClock clock = new();
    private readonly LiveReadings live = new() { Sampling = true };
    private readonly RecordLog log = RandomSession.Log(2000, seed: 1);

    [Fact]
    public void Readings_come_at_the_pace_that_the_host_asks_for_for_as_long_as_it_looks()
    {
        List<TimeSpan> seen = Watch(LineQuality.Usb115200, TimeSpan.FromSeconds(60), out _);
        Assert.InRange(seen.Count, 290, 340);
        Assert.All(seen.Zip(seen.Skip(1)), pair => Assert.InRange((pair.Second - pair.First).TotalMilliseconds, 0, 260));
    }

    [Theory]
    [InlineData(1500, 0)]
    [InlineData(5000, 0)]
    [InlineData(5000, 1e-4)]
    [InlineData(12_000, 1e-3)]
    public void A_slow_pace_is_kept_too(int milliseconds, double bitErrorRate)
    {
        TimeSpan pace = TimeSpan.FromMilliseconds(milliseconds);
        List<TimeSpan> seen = Watch(LineQuality.Usb115200 with { BitErrorRate = bitErrorRate }, 20 * pace, out _, pace);
        Assert.InRange(seen.Count, 19, 22);
        Assert.All(seen.Zip(seen.Skip(1)), pair => Assert.InRange((pair.Second - pair.First).TotalMilliseconds, milliseconds - 100, milliseconds + (bitErrorRate == 0 ? 100 : 2000)));
    }

    [Theory]
    [InlineData(1e-5)]
    [InlineData(1e-4)]
    [InlineData(1e-3)]
    public void A_bad_line_loses_readings_and_never_the_watch(double bitErrorRate)
    {
        List<TimeSpan> seen = Watch(LineQuality.Usb115200 with { BitErrorRate = bitErrorRate }, TimeSpan.FromSeconds(60), out _);
        Assert.True(seen.Count > 100, $"{seen.Count} readings");
        Assert.InRange(seen[^1].TotalSeconds, 58, 60.5);
    }

    [Fact]
    public void A_logger_that_nobody_asks_any_more_falls_silent()
    {
        Watch(LineQuality.Usb115200, TimeSpan.FromSeconds(5), out VirtualLine line);
        line.PassUntil(clock.Now + 1_000_000_000);
        long sent = line.ToHost.Sent;
        line.PassUntil(clock.Now + 60_000_000_000);
        Assert.Equal(sent, line.ToHost.Sent);
    }

    [Fact]
    public void An_unplugged_host_is_told_nothing_after_a_few_seconds()
    {
        using CancellationTokenSource stop = new();
        VirtualLine line = Line(LineQuality.Usb115200);
        line.ToLogger.CutBefore = 200;
        line.ToHost.CutBefore = 4000;
        Assert.Throws<Host.UserErrorException>(() => Connection(line).Watch(TimeSpan.FromMilliseconds(200), _ => { }, stop.Token));
        line.PassUntil(clock.Now + 10_000_000_000);
        long sent = line.ToHost.Sent;
        line.PassUntil(clock.Now + 60_000_000_000);
        Assert.Equal(sent, line.ToHost.Sent);
    }

    [Fact]
    public void A_calibration_arrives_over_a_bad_line()
    {
        LoggerConnection connection = Connection(Line(LineQuality.Usb115200 with { BitErrorRate = 5e-4 }));
        for (byte channel = 1; channel <= 3; channel++)
        {
            SendCalibration sent = new() { Channel = channel, ZeroCounts = 3990 + channel, SpanCounts = 16000, Reference = "gauge 7" };
            Assert.Equal(sent.ZeroCounts, connection.SendCalibration(sent).ZeroCounts);
        }

        Assert.Equal([3991, 3992, 3993], Enumerable.Range(1, 3).Select(channel => connection.GetCalibration(channel).ZeroCounts));
        Assert.Throws<Host.UserErrorException>(() => connection.GetCalibration(4));
    }

    private List<TimeSpan> Watch(LineQuality quality, TimeSpan howLong, out VirtualLine line, TimeSpan? pace = null)
    {
        using CancellationTokenSource stop = new();
        List<TimeSpan> seen = [];
        line = Line(quality);
        Connection(line).Watch(
            pace ?? TimeSpan.FromMilliseconds(200),
            _ =>
            {
                seen.Add(clock.Elapsed);
                if (clock.Elapsed >= howLong)
                {
                    stop.Cancel();
                }
            },
            stop.Token);
        return seen;
    }

    private LoggerConnection Connection(VirtualLine line) => new(HostLine.Over(line, "virtual"), null, clock);

    private VirtualLine Line(LineQuality quality) => new(clock, quality, seed: 5, port =>
    {
        LinkAnswers answers = new(log, port, RandomSession.LoggerId, bootCount: 1) { Live = live };
        return () => answers.Step(clock.Now / 1000, 0);
    });
}
