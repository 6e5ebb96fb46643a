using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using LoggerBox.Host.Link;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>The host library beside the virtual logger in a process of its own.</summary>
public sealed class LiveLoggerTests
{
    [Fact]
    public void A_logger_that_records_in_real_time_tells_what_it_reads()
    {
        using var logger = SimulatedLogger.Start("--speed", "real");
        using HostLine line = HostLine.Open(logger.Port);
        using CancellationTokenSource stop = new();
        List<(long Microseconds, int Speed, short Main)> seen = [];
        new LoggerConnection(line).Watch(
            TimeSpan.FromMilliseconds(100),
            live =>
            {
                if (live.Sampling)
                {
                    seen.Add((live.Microseconds, live.Speed, live.Main));
                }

                if (seen.Count == 10)
                {
                    stop.Cancel();
                }
            },
            stop.Token);

        // A request that is repeated is answered with the set that is the latest then: perhaps one that was told already.
        Assert.Equal(seen.Select(reading => reading.Microseconds).Order(), seen.Select(reading => reading.Microseconds));
        Assert.InRange(seen.DistinctBy(reading => reading.Microseconds).Count(), 5, 10);

        // The engine is still off: a pickup without pulses has no speed at first, a loop always has its current.
        Assert.All(seen, reading => Assert.True(reading.Speed is SampleSet.Missing or >= 0));
        Assert.All(seen, reading => Assert.InRange(reading.Main, 3000, 21_000));
        Assert.True(new LoggerConnection(line).Hello().Recording);
    }

    [Fact]
    public void A_fetch_sets_a_clock_that_is_off_and_says_so_once()
    {
        using var bench = new Workbench();
        using var logger = SimulatedLogger.Start("--tcp");
        CommandResult first = LoggerBoxCommand.Run("fetch", "--port", logger.Port, "--archive", bench.Archive).Expect(0);
        Assert.Matches($@"The clock of the logger on {logger.Port} was .* (ahead|behind): it was set\.", first.Error);
        using (HostLine line = HostLine.Open(logger.Port))
        {
            Assert.InRange(new LoggerConnection(line).Hello().UtcSeconds, DateTimeOffset.UtcNow.ToUnixTimeSeconds() - 30, DateTimeOffset.UtcNow.ToUnixTimeSeconds() + 1);
        }

        Assert.DoesNotContain("clock", LoggerBoxCommand.Run("fetch", "--port", logger.Port, "--archive", bench.Archive).Expect(0).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_and_calibration_that_were_sent_are_those_of_the_next_session()
    {
        using var bench = new Workbench();
        string card = bench.At("card");
        using (var logger = SimulatedLogger.Start("--store", card, "--seed", "1", "--tcp"))
        using (HostLine line = HostLine.Open(logger.Port))
        {
            LoggerConnection connection = new(line);
            connection.SendPlan(new PlanRecord { Name = "another truck" });
            CalibrationAnswer held = connection.GetCalibration(Channel.Clutch);
            SendCalibration sent = new() { Channel = Channel.Clutch, Kind = held.Kind, ZeroCounts = held.ZeroCounts, SpanCounts = held.SpanCounts, SpanPascal = 1_234_567, Transducer = "no. 12" };
            Assert.Equal(1_234_567, connection.SendCalibration(sent).SpanPascal);
        }

        using var restarted = SimulatedLogger.Start("--store", card, "--seed", "2", "--tcp");
        LoggerBoxCommand.Run("fetch", "--port", restarted.Port, "--archive", bench.Archive).Expect(0);
        RecordedSession[] sessions = [.. RecordedCard.Sessions(bench.Archive).Select(bytes => SessionDecoder.Decode(bytes).Session)];
        Assert.Equal(["another truck"], sessions.Skip(1).Select(session => session.Plan!.Name));
        Assert.Equal(1_234_567, sessions[1].Header.Pressures[Channel.Clutch - 1].SpanPascal);
        Assert.NotEqual("another truck", sessions[0].Plan!.Name);
        Assert.NotEqual(1_234_567, sessions[0].Header.Pressures[Channel.Clutch - 1].SpanPascal);
        Assert.Equal(sessions[0].Header.Pressures[0].SpanPascal, sessions[1].Header.Pressures[0].SpanPascal);
    }

    [Fact]
    public void Its_clock_can_be_set_and_its_calibration_read()
    {
        using var logger = SimulatedLogger.Start();
        using HostLine line = HostLine.Open(logger.Port);
        LoggerConnection connection = new(line);
        connection.SetClock(DateTimeOffset.FromUnixTimeSeconds(1_900_000_000));
        Assert.InRange(connection.Hello().UtcSeconds, 1_900_000_000u, 1_900_000_060u);
        CalibrationAnswer held = connection.GetCalibration(Channel.Main);
        Assert.Equal(ChannelKind.CurrentLoop, held.Kind);
        Assert.True(held.SpanPascal > 0 && held.SpanCounts > 0);
    }
}
