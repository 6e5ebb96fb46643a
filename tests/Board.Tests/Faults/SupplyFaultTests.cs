using System;
using System.Linq;
using LoggerBox.Board.Tests.Bench;
using LoggerBox.BoardParts.Operation;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Board.Tests.Faults;

public class SupplyFaultTests
{
    [Fact]
    public void A_brown_out_while_cranking_stores_what_was_read_and_goes_on_at_once_after_it()
    {
        using BoardBench bench = new();
        bench.Start();
        bench.Memory.Settings.PlanNumber = (byte)bench.Memory.Plans.Put(new PlanRecord { Name = "sample truck" });
        bench.Run(15);
        double lowAt = bench.Now / 1e6;
        bench.Program.Levels.SupplyLow = true;
        bench.Run(0.1);

        // The hold-up is used up: nothing was closed, the board starts again while the starter still turns.
        bench.Pulses.Rpm = 180;
        bench.Start();
        bench.Run(1);
        Assert.Equal(LoggerState.Recording, bench.Program.State);
        bench.Program.Levels.SupplyLow = false;
        bench.Pulses.Rpm = 700;
        bench.Run(5);
        bench.Press(2);
        Assert.Equal(2, bench.Program.Log.Sessions.Count);
        ReadSession first = ReadSession.Of(bench.Program.Log, bench.Program.Log.Sessions[0]);
        Assert.Null(first.End);
        Assert.Contains(Cue.LowSupply, first.Cues);
        Assert.Contains((BoardFault.Supply, 1), first.Faults);
        Assert.InRange(first.Sets[^1].Microseconds / 1e6, lowAt - 0.03, lowAt + 0.1);
        ReadSession second = bench.Session();
        Assert.Contains(Cue.Restarted, second.Cues);
        Assert.Contains(second.Events, one => one.Kind == EventKind.Restart && one.Value == (int)RestartReason.PowerReturned * 256);
        Assert.Equal("sample truck", second.Header.PlanName);
        Assert.Equal(first.Header.BootCount + 1, second.Header.BootCount);
        Assert.InRange(second.Header.StartMicroseconds, 0, 600000);
    }

    [Fact]
    public void A_supply_that_stays_low_ends_the_session_in_order()
    {
        using BoardBench bench = new BoardBench().Record();
        bench.Program.Levels.SupplyLow = true;
        bench.Run(35);
        Assert.Equal(LoggerState.Ended, bench.Program.State);
        Assert.Equal(SessionEndReason.LowSupply, bench.Session().End!.Reason);
    }

    [Theory]
    [InlineData(0x80, 0x00)]
    [InlineData(0x00, 0x7A)]
    public void A_clock_that_was_never_set_leaves_the_session_undated_and_says_so(byte status, byte seconds)
    {
        using BoardBench bench = new();
        (bench.Chips.ClockRegisters[0x0F], bench.Chips.ClockRegisters[0]) = (status, seconds);
        bench.Record().Run(3);
        bench.Press(2);
        ReadSession session = bench.Session();
        Assert.Equal(0u, session.Header.StartUtcSeconds);
        Assert.Contains(Cue.ClockNotSet, session.Cues);
        Assert.Contains((BoardFault.Clock, 1), session.Faults);
    }

    [Fact]
    public void A_clock_that_is_set_dates_the_session()
    {
        using BoardBench bench = new BoardBench().Record();
        Assert.InRange(bench.Session().Header.StartUtcSeconds, BoardBench.Utc2026 + 9, BoardBench.Utc2026 + 11);
        Assert.DoesNotContain(Cue.ClockNotSet, bench.Session().Cues);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(9)]
    [InlineData(40)]
    [InlineData(300)]
    public void A_configuration_torn_while_it_is_written_leaves_the_one_before(int bytesThatGotThere)
    {
        using BoardBench bench = new();
        bench.Flash[1].CutAfterBytes = bytesThatGotThere;
        bench.Start();
        ushort firstStart = bench.Memory.Settings.BootCount;
        bench.Start();
        Assert.Equal(0xB0A7u, bench.Memory.Settings.LoggerId);
        Assert.Equal(3447379, bench.Memory.Settings.Pressures[0].SpanPascal);
        Assert.False(bench.Memory.IsWithoutCalibration);
        Assert.True(bench.Memory.Settings.BootCount >= firstStart);
    }

    [Fact]
    public void A_configuration_lost_in_both_copies_is_said_and_no_count_can_be_taken_for_a_pressure()
    {
        using BoardBench bench = new();
        bench.Flash[0].Bytes[20] ^= 0x10;
        Array.Fill(bench.Chips.Milliampere, 12);
        bench.Record().Run(4);
        bench.Press(2);
        ReadSession session = bench.Session();
        Assert.Contains(Cue.SettingsDamaged, session.Cues);
        Assert.Contains((BoardFault.Settings, 1), session.Faults);
        Assert.All(session.Header.Pressures, calibration => Assert.Equal(ChannelKind.None, calibration.Kind));
        Assert.All(session.Holds, hold => Assert.False(hold.Readings[Channel.Main].Present));
        Assert.All(session.Values(Channel.Main, 12, 14), value => Assert.Equal(9600, value));
    }

    [Fact]
    public void A_calibration_that_comes_by_cable_is_kept_over_a_restart_and_stands_in_the_next_session()
    {
        using BoardBench bench = new();
        bench.Flash[0].Bytes[20] ^= 0x10;
        bench.Record();
        for (byte channel = 1; channel <= 3; channel++)
        {
            bench.Port.Send(new SendCalibration
            {
                Channel = channel,
                Kind = ChannelKind.CurrentLoop,
                ZeroCounts = 3201,
                SpanCounts = 12790,
                SpanPascal = 3447379,
                Reference = "gauge 7",
            });
            bench.Run(0.2);
        }

        bench.Press(2);
        bench.Record().Run(1);
        ReadSession session = bench.Session();
        Assert.All(session.Header.Pressures, calibration => Assert.Equal((3201, 12790), (calibration.ZeroCounts, calibration.SpanCounts)));
        Assert.Equal("gauge 7", bench.Memory.Settings.Pressures[2].Reference);
        Assert.DoesNotContain(Cue.SettingsDamaged, session.Cues);
    }
}
