using System;
using System.Linq;
using LoggerBox.Host.Link;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Host.Tests.Link;

/// <summary>Calibrations on their way to a logger over a real pseudo-terminal: all of them, or what was there before.</summary>
public sealed class CalibrationStoringTests
{
    private static readonly LinkTiming Impatient = LinkTiming.Default with { Answer = TimeSpan.FromMilliseconds(400) };

    [Fact]
    public void All_channels_are_stored_and_read_back()
    {
        using LoggerOnALine logger = new(PseudoTerminal.Open(), LoggerOnALine.Log(100, 1));
        using HostLine line = HostLine.Open(logger.Port);
        new CalibrationStoring(new LoggerConnection(line), [1, 2, 3]).Store([Fresh(1), Fresh(2), Fresh(3)]);
        Assert.Equal([3301, 3302, 3303], Held(logger));
    }

    /// <summary>The logger keeps 48 bytes of a text: a longer one comes back as another than was sent.</summary>
    [Fact]
    public void Where_one_comes_back_otherwise_every_channel_holds_what_it_held()
    {
        using LoggerOnALine logger = new(PseudoTerminal.Open(), LoggerOnALine.Log(100, 1));
        using HostLine line = HostLine.Open(logger.Port);
        LoggerConnection connection = new(line);
        new CalibrationStoring(connection, [1, 2]).Store([Fresh(1), Fresh(2)]);
        SendCalibration bad = Fresh(2, zero: 3400);
        bad.Reference = new string('r', 60);

        string said = Assert.Throws<UserErrorException>(() => new CalibrationStoring(connection, [1, 2]).Store([Fresh(1, zero: 3400), bad])).Message;

        Assert.Contains("holds another calibration of clutch than it was sent", said, StringComparison.Ordinal);
        Assert.Contains("every channel holds what it held before", said, StringComparison.Ordinal);
        Assert.Equal([3301, 3302, 0], Held(logger));
    }

    [Theory]
    [InlineData(4, "main and clutch may hold the new calibration or the old one, converter the old one")]
    [InlineData(3, "main may hold the new calibration or the old one, clutch and converter the old one")]
    public void A_line_that_dies_on_the_way_leaves_a_sentence_that_says_what_is_sure(int answers, string sure)
    {
        DevicePort? port = null;
        using LoggerOnALine logger = new(PseudoTerminal.Open(), LoggerOnALine.Log(100, 1), faults => port = faults);
        using HostLine line = HostLine.Open(logger.Port);
        LoggerConnection connection = new(line, Impatient);
        connection.GetCalibration(1);
        long anAnswer = port!.BytesWritten;
        port.BytesUntilCut = anAnswer * (answers + 1) + 40;

        string said = Assert.Throws<UserErrorException>(() => new CalibrationStoring(connection, [1, 2, 3]).Store([Fresh(1), Fresh(2), Fresh(3)])).Message;

        Assert.Contains(sure, said, StringComparison.Ordinal);
        Assert.Contains("calibrate --show", said, StringComparison.Ordinal);
        Assert.Equal(0, logger.Answers.Calibrations.Find(3)!.ZeroCounts);
    }

    private static int[] Held(LoggerOnALine logger) => [.. Enumerable.Range(Channel.Main, 3).Select(channel => logger.Answers.Calibrations.Find(channel)!.ZeroCounts)];

    private static SendCalibration Fresh(int channel, int zero = 3300) => new()
    {
        Channel = (byte)channel,
        Kind = ChannelKind.CurrentLoop,
        ZeroCounts = zero == 3300 ? zero + channel : zero,
        SpanCounts = 12800,
        SpanPascal = 3_450_000,
        AccuracyPascal = 8600,
        UtcSeconds = 1_790_000_000,
        Transducer = "TX",
        Reference = "DW-1, C-77",
    };
}
