using System;
using System.Collections.Generic;
using System.Threading;
using LoggerBox.Host.Link;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Link;

/// <summary>Live readings and calibrations over a real pseudo-terminal.</summary>
public sealed class LiveReadingsTests
{
    [Fact]
    public void Readings_of_the_logger_come_over_a_serial_line_until_nobody_looks_any_more()
    {
        using LoggerOnALine logger = new(PseudoTerminal.Open(), LoggerOnALine.Log(100, 1));
        logger.Answers.Live.Speed = 7105;
        logger.Answers.Live.Gear = Gear.Reverse;
        using HostLine line = HostLine.Open(logger.Port);
        using CancellationTokenSource stop = new();
        List<(int Speed, Gear Gear)> seen = [];

        new LoggerConnection(line).Watch(
            TimeSpan.FromMilliseconds(100),
            readings =>
            {
                seen.Add((readings.Speed, readings.Gear));
                if (seen.Count == 5)
                {
                    stop.Cancel();
                }
            },
            stop.Token);

        Assert.Equal(5, seen.Count);
        Assert.All(seen, reading => Assert.Equal((7105, Gear.Reverse), reading));
        Assert.NotNull(new LoggerConnection(line).Hello());
    }

    [Fact]
    public void A_line_on_which_nobody_answers_ends_the_watch_with_a_sentence()
    {
        using PseudoTerminal nobody = PseudoTerminal.Open();
        using HostLine line = HostLine.Open(nobody.PortName);
        LinkTiming impatient = LinkTiming.Default with { Silence = TimeSpan.FromMilliseconds(300) };
        UserErrorException error = Assert.Throws<UserErrorException>(
            () => new LoggerConnection(line, impatient).Watch(TimeSpan.FromSeconds(1), _ => { }, CancellationToken.None));
        Assert.Contains("No logger answers", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_calibration_goes_to_the_logger_and_comes_back()
    {
        using LoggerOnALine logger = new(PseudoTerminal.Open(), LoggerOnALine.Log(100, 1));
        using HostLine line = HostLine.Open(logger.Port);
        LoggerConnection connection = new(line);
        SendCalibration sent = new() { Channel = Channel.Clutch, Kind = ChannelKind.CurrentLoop, ZeroCounts = 3991, SpanCounts = 16000, SpanPascal = 3_450_000, Transducer = "no. 12" };
        connection.SendCalibration(sent);
        CalibrationAnswer held = connection.GetCalibration(Channel.Clutch);
        Assert.Equal((3991, 3_450_000, "no. 12"), (held.ZeroCounts, held.SpanPascal, held.Transducer));
    }
}
