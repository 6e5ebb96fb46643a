using System;
using System.Linq;
using LoggerBox.Board.Tests.Bench;
using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Board.Tests.Faults;

/// <summary>Bands after NAMUR NE 43; counts by 100 ohm at 125 microvolt a count.</summary>
public class LoopFaultTests
{
    private const double SoundMilliampere = 8.32;
    private const int SoundCounts = 6656;

    [Theory]
    [InlineData(0.0, LoopState.Open)]
    [InlineData(3.5, LoopState.Open)]
    [InlineData(21.5, LoopState.Shorted)]
    [InlineData(60.0, LoopState.Shorted)]
    [InlineData(20.7, LoopState.Saturated)]
    [InlineData(3.7, LoopState.Saturated)]
    public void A_loop_out_of_its_band_is_told_recorded_as_current_and_never_a_pressure(double milliampere, LoopState state)
    {
        using BoardBench bench = Sound();
        bench.Chips.Milliampere[1] = milliampere;
        bench.Run(12);
        bench.Press(2);
        ReadSession session = bench.Session();
        Assert.Contains(Cue.LoopFault, session.Cues);
        Assert.Contains(session.Events, one => one.Kind == EventKind.LoopState && one.Value == (Channel.Clutch * 256) + (int)state);
        int expected = (int)Math.Clamp(Math.Round(milliampere * 800), -32767, 32767);
        Assert.All(session.Values(Channel.Clutch, 18, 25), value => Assert.Equal(expected, value));
        HoldRecord last = session.Holds[^1];
        Assert.True(last.Readings[Channel.Main].Present);
        Assert.False(last.Readings[Channel.Clutch].Present && last.StartMicroseconds > 18e6);
    }

    [Fact]
    public void A_stuck_bus_gives_missing_readings_a_cue_and_works_again_after_recovery()
    {
        using BoardBench bench = Sound();
        (bench.Chips.IsStuck, bench.Chips.RecoveriesNeeded) = (true, 3);
        double from = bench.Now / 1e6;
        int transfers = bench.Chips.Transfers;
        bench.Run(1);
        Assert.InRange(bench.Chips.Transfers - transfers, 1, 4);
        bench.Run(9);
        bench.Press(2);
        ReadSession session = bench.Session();
        int[] values = session.Values(Channel.Main, from + 0.03, from + 10);
        Assert.All(values, value => Assert.True(value is SampleSet.Missing or SoundCounts, $"{value} counts"));
        Assert.Contains(SampleSet.Missing, values);
        Assert.Equal(SoundCounts, values[^1]);
        Assert.Contains(Cue.ReadingsLost, session.Cues);
        Assert.Contains((BoardFault.LoopBus, 1), session.Faults);
        Assert.Contains((BoardFault.LoopBus, 0), session.Faults);
        Assert.Equal(3, bench.Chips.Recoveries);
        Assert.All(session.Values(Channel.Speed, from, from + 9), value => Assert.InRange(value, 6850, 7150));
    }

    [Fact]
    public void A_bus_that_stays_stuck_is_left_alone_longer_and_longer()
    {
        using BoardBench bench = Sound();
        (bench.Chips.IsStuck, bench.Chips.RecoveriesNeeded) = (true, int.MaxValue);
        int transfers = bench.Chips.Transfers;
        bench.Run(60);

        // Each would stop the real board for a second.
        Assert.InRange(bench.Chips.Transfers - transfers, 5, 14);
    }

    [Fact]
    public void An_unplugged_converter_is_missing_and_its_neighbours_go_on()
    {
        using BoardBench bench = Sound();
        bench.Chips.IsUnplugged[2] = true;
        bench.Run(5);
        bench.Chips.IsUnplugged[2] = false;
        bench.Run(5);
        bench.Press(2);
        ReadSession session = bench.Session();
        Assert.All(session.Values(Channel.Converter, 17, 21), value => Assert.Equal(SampleSet.Missing, value));
        Assert.All(session.Values(Channel.Converter, 22, 25), value => Assert.Equal(SoundCounts, value));
        Assert.All(session.Values(Channel.Main, 13, 25), value => Assert.Equal(SoundCounts, value));
        Assert.Equal(new[] { (BoardFault.LoopConverter, Channel.Converter), (BoardFault.LoopConverter, 0) }, session.Faults);
        Assert.Contains(Cue.ReadingsLost, session.Cues);
    }

    [Fact]
    public void Converters_that_restarted_at_another_range_give_no_value_until_they_are_set_again()
    {
        using BoardBench bench = Sound();
        for (int i = 0; i < 20; i++)
        {
            bench.Chips.RestartConverters();
            bench.Run(0.37);
        }

        bench.Press(2);
        int[] values = bench.Session().Values(Channel.Main, 13, 22);
        Assert.All(values, value => Assert.True(value is SampleSet.Missing or SoundCounts, $"{value} counts"));
        Assert.InRange(values.Count(value => value == SampleSet.Missing), 20, 60);
    }

    private static BoardBench Sound()
    {
        BoardBench bench = new();
        Array.Fill(bench.Chips.Milliampere, SoundMilliampere);
        bench.Pulses.Rpm = 700;
        return bench.Record().Run(5);
    }
}
