using System;
using System.Linq;
using LoggerBox.Board.Tests.Bench;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Board.Tests.Operation;

/// <summary>What the person in the seat is told while the test goes as it should, or nearly.</summary>
public class SeatCueTests
{
    private static readonly PlanRecord Plan = new()
    {
        Name = "sample truck",
        IdleMaxTenths = 7600,
        GovernedTenths = 24500,
        MainIdleMinPascal = 300000,
        MainHoldMinPascal = 900000,
        MainHoldMaxPascal = 1200000,
        ReliefDropMinTenths = 900,
        ReliefDropMaxTenths = 2600,
    };

    [Fact]
    public void A_session_is_armed_and_the_zero_is_taken_with_the_engine_off()
    {
        using BoardBench bench = With(0, 4);
        bench.Run(8);
        Assert.Equal([Cue.Armed, Cue.ZeroTaken], Ended(bench).Cues.Take(2));
    }

    [Fact]
    public void A_reading_that_stood_still_is_captured_once()
    {
        using BoardBench bench = With(700, 8);
        bench.Run(12);
        Assert.Single(Ended(bench).Cues, cue => cue == Cue.Captured);
    }

    [Theory]
    [InlineData(1880, Cue.SpeedHigher)]
    [InlineData(2120, Cue.SpeedLower)]
    public void Beside_the_hold_window_the_way_back_is_told_and_the_reading_asked_again(int rpm, Cue cue)
    {
        using BoardBench bench = With(700, 8);
        bench.Run(8);
        bench.Pulses.Rpm = rpm;
        bench.Run(9);
        ReadSession session = Ended(bench);
        Assert.Single(session.Cues, one => one == cue);
        Assert.Contains(Cue.NotCapturedSpeed, session.Cues);
    }

    [Fact]
    public void In_gear_nobody_is_told_to_press_harder_and_the_set_up_is_asked_once()
    {
        using BoardBench bench = With(700, 8);
        bench.Program.Levels.Forward = true;
        bench.Run(5);
        for (int run = 0; run < 3; run++)
        {
            bench.Pulses.Rpm = 1880;
            bench.Run(4);
            bench.Pulses.Rpm = 700;
            bench.Run(35);
        }

        ReadSession session = Ended(bench);
        Assert.DoesNotContain(Cue.SpeedHigher, session.Cues);
        Assert.Single(session.Cues, cue => cue == Cue.SetUpClearOrDown);
    }

    [Theory]
    [InlineData(0.2, TruckSaid.Down, Step.StallForward)]
    [InlineData(2.0, TruckSaid.Clear, Step.HoldForward)]
    public void The_answer_names_the_step(double pressSeconds, TruckSaid said, Step step)
    {
        using BoardBench bench = With(700, 8);
        bench.Program.Levels.Forward = true;
        bench.Run(5);
        bench.Pulses.Rpm = 1990;
        bench.Run(1);
        Assert.Equal("CL-d", bench.Text);
        bench.Press(pressSeconds);
        bench.Run(5);
        bench.Pulses.Rpm = 700;
        bench.Run(35);
        ReadSession session = Ended(bench);
        Assert.Contains(session.Events, one => one.Kind == EventKind.SetUp && one.Value == (int)said);
        Assert.Contains(session.Events, one => one.Kind == EventKind.StepMark && one.Value == (int)step);
    }

    [Fact]
    public void A_pedal_let_go_too_early_is_to_be_done_again()
    {
        using BoardBench bench = With(700, 8);
        bench.Run(8);
        bench.Pulses.Rpm = 2400;
        bench.Run(2.5);
        bench.Pulses.Rpm = 700;
        bench.Run(5);
        Assert.Contains(Cue.NotCapturedTooShort, Ended(bench).Cues);
    }

    [Fact]
    public void A_relief_that_is_held_for_five_seconds_is_told_to_stop_once()
    {
        using BoardBench bench = With(700, 8);
        bench.Run(5);
        bench.Pulses.Rpm = 2450;
        bench.Run(6);
        double from = bench.Now / 1e6;
        bench.Pulses.Rpm = 2300;
        bench.Run(9);
        bench.Pulses.Rpm = 700;
        bench.Run(2);
        ReadSession session = Ended(bench);
        (long microseconds, _, _) = Assert.Single(session.Events, one => one.Kind == EventKind.Cue && one.Value == (int)Cue.ReliefStop);
        Assert.InRange((microseconds / 1e6) - from, 4.9, 5.6);
    }

    [Fact]
    public void After_a_test_the_zero_is_asked_again()
    {
        using BoardBench bench = With(700, 8);
        bench.Run(70);
        bench.Pulses.Rpm = 0;
        Array.Fill(bench.Chips.Milliampere, 4);
        bench.Run(8);
        Cue[] cues = [.. Ended(bench).Cues];
        Assert.True(Array.IndexOf(cues, Cue.ZeroAgain) >= 0 && Array.IndexOf(cues, Cue.ZeroAgain) < Array.LastIndexOf(cues, Cue.ZeroTaken));
    }

    [Fact]
    public void Line_pressure_below_its_limit_forbids_the_stall()
    {
        using BoardBench bench = With(700, 5);
        bench.Run(8);
        Assert.Single(Ended(bench).Cues, cue => cue == Cue.PressureTooLowToStall);
    }

    [Fact]
    public void Line_pressure_far_above_its_limit_is_told()
    {
        using BoardBench bench = With(2000, 12);
        bench.Run(8);
        Assert.Contains(Cue.MainFarTooHigh, Ended(bench).Cues);
    }

    [Fact]
    public void A_reading_within_its_error_of_a_limit_is_to_be_repeated_once()
    {
        // 900 kPa of 3447 kPa over 16 mA.
        using BoardBench bench = With(2000, 4 + (16 * 903000 / 3447379.0));
        bench.Run(8);
        bench.Pulses.Rpm = 700;
        bench.Run(8);
        bench.Pulses.Rpm = 2000;
        bench.Run(8);
        Assert.Single(Ended(bench).Cues, cue => cue == Cue.Borderline);
    }

    [Fact]
    public void A_short_press_says_how_many_steps_are_missing()
    {
        using BoardBench bench = With(700, 8);
        bench.Run(8);
        bench.Pulses.Rpm = 2000;
        bench.Run(1);
        bench.Press(0.2);
        bench.Run(0.5);
        Assert.Equal("n 10", bench.Text);
        Assert.Contains(Cue.StepsMissing, Ended(bench).Cues);
    }

    [Fact]
    public void The_press_that_ends_the_session_counts_the_reading_that_still_stands()
    {
        using BoardBench bench = With(700, 8);
        bench.Run(8);
        bench.Press(2);
        Assert.Equal("n 10", bench.Text);
        Assert.Single(bench.Session().Holds);
    }

    [Fact]
    public void The_display_shows_the_speed_and_in_a_stall_its_seconds()
    {
        using BoardBench bench = With(700, 8);
        bench.Run(12);
        Assert.InRange(int.Parse(bench.Text), 690, 710);
        bench.Program.Levels.Forward = true;
        bench.Run(4);
        bench.Pulses.Rpm = 1700;
        bench.Run(1);
        bench.Press(0.2);
        bench.Run(1.4);
        Assert.Matches("^t  [23]$", bench.Text);
    }

    [Fact]
    public void A_host_that_greets_is_shown()
    {
        using BoardBench bench = With(700, 8);
        bench.Run(6);
        bench.Port.Send(new Hello { Version = LinkVersion.Current });
        bench.Run(0.5);
        Assert.Contains(MessageCode.HelloAnswer, bench.Port.Answers);
        Assert.Contains(Cue.LinkAlive, Ended(bench).Cues);
    }

    [Fact]
    public void A_plan_is_chosen_with_the_button_before_the_session()
    {
        using BoardBench bench = new BoardBench().Start();
        bench.Memory.Plans.Put(new PlanRecord { Name = "first" });
        bench.Memory.Plans.Put(new PlanRecord { Name = "second" });
        bench.Run(1);
        bench.Press(0.2);
        bench.Press(0.2);
        Assert.Equal("P  2", bench.Text);
        bench.Press(2);
        bench.Run(5);
        Assert.Equal("second", Ended(bench).Header.PlanName);
    }

    public enum TruckSaid
    {
        Clear = 1,
        Down = 2,
    }

    private static BoardBench With(int rpm, double milliampere)
    {
        BoardBench bench = new();
        Array.Fill(bench.Chips.Milliampere, milliampere);
        bench.Pulses.Rpm = rpm;
        bench.Start();
        bench.Memory.Settings.PlanNumber = (byte)bench.Memory.Plans.Put(Plan);
        return bench.Run(11);
    }

    private static ReadSession Ended(BoardBench bench)
    {
        bench.Press(2);
        return bench.Session();
    }
}
