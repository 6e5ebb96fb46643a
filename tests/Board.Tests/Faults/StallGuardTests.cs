using System;
using System.Linq;
using LoggerBox.Board.Tests.Bench;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Board.Tests.Faults;

/// <summary>Whatever comes over the link or stands in a plan, a run in gear is told to stop.</summary>
public class StallGuardTests
{
    [Fact]
    public void No_link_command_moves_the_limits_of_a_stall_that_is_going_on()
    {
        Random chance = new(20261125);
        using BoardBench bench = InAStall(new PlanRecord { Name = "sample truck", StallForwardTenths = 19000, StallForwardToleranceTenths = 1500 });
        for (int i = 0; i < 1300; i++)
        {
            Say(bench.Port, chance);
            bench.Run(0.01);
        }

        bench.Press(2);
        Assert.InRange(TimeOf(bench, Cue.StallStop), 9.8, 10.4);
        Assert.InRange(TimeOf(bench, Cue.StallWarn), 7.8, 8.4);
        Assert.InRange(TimeOf(bench, Cue.StallTarget), 4.8, 5.4);
    }

    // A connector that opens for two polls, wherever they fall within a tenth of a second: one wrong reading is no pedal that came up.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void A_pickup_that_is_lost_for_a_moment_does_not_start_the_clock_anew(int phase)
    {
        using BoardBench bench = InAStall(new PlanRecord { Name = "sample truck", PickupPulses = 126 }, pulses: 126);
        bench.Run(6 + (0.02 * phase));
        bench.Pulses.Rpm = 0;
        bench.Run(0.02);
        bench.Pulses.Rpm = 1900;
        bench.Run(6);
        bench.Pulses.Rpm = 700;
        bench.Run(2);
        bench.Press(2);
        Assert.InRange(TimeOf(bench, Cue.StallStop), 9.8, 10.4);
        Assert.InRange(TimeOf(bench, Cue.CoolDown), 12, 13.5);
    }

    [Theory]
    [InlineData(1900, 6, 30000)]
    [InlineData(30000, 31000, 32000)]
    [InlineData(5000, 8000, int.MaxValue)]
    [InlineData(-1, -1, -1)]
    [InlineData(8000, 5000, 10000)]
    public void A_plan_with_insane_stall_times_is_refused_with_a_reason(int target, int warn, int stop)
    {
        Assert.Equal(RefusalReason.PlanStallTimes, Refused(new PlanRecord { StallTargetMilliseconds = target, StallWarnMilliseconds = warn, StallStopMilliseconds = stop }));
    }

    [Fact]
    public void A_plan_that_would_blind_a_guard_is_refused_with_a_reason()
    {
        Assert.Equal(RefusalReason.PlanSpeeds, Refused(new PlanRecord { IdleMaxTenths = 60000 }));
        Assert.Equal(RefusalReason.PlanSpeeds, Refused(new PlanRecord { StallForwardTenths = 19000, StallForwardToleranceTenths = 9000 }));
        Assert.Equal(RefusalReason.PlanSpeeds, Refused(new PlanRecord { GovernedTenths = 24500, StallForwardTenths = 30000 }));
        Assert.Equal(RefusalReason.PlanSpeeds, Refused(new PlanRecord { HoldWindowTenths = 20000 }));
        Assert.Equal(RefusalReason.PlanStallTimes, Refused(new PlanRecord { CooldownMilliseconds = 1 }));
        Assert.Equal(RefusalReason.PlanPressures, Refused(new PlanRecord { MainHoldMinPascal = -1 }));
        Assert.Equal(RefusalReason.PlanPickup, Refused(new PlanRecord { PickupPulses = 60000 }));
    }

    [Fact]
    public void A_plan_inside_its_bounds_is_taken_kept_over_a_restart_and_chosen()
    {
        using BoardBench bench = new BoardBench().Start();
        bench.Port.Send(new SendPlan(new PlanRecord { Name = "sample truck", GovernedTenths = 24500 }));
        bench.Run(0.1);
        Assert.Contains(MessageCode.PlanAnswer, bench.Port.Answers);
        bench.Record();
        Assert.Equal("sample truck", bench.Memory.Plans[1].Name);
    }

    [Fact]
    public void Even_a_declared_hold_is_told_to_stop()
    {
        using BoardBench bench = InAStall(new PlanRecord { Name = "sample truck" });
        bench.Program.Levels.Button = true;
        bench.Run(2);
        bench.Program.Levels.Button = false;
        bench.Run(40);
        bench.Pulses.Rpm = 700;
        bench.Run(40);
        bench.Press(2);
        Assert.Contains(bench.Session().Events, one => one.Kind == EventKind.SetUp && one.Value == 1);
        Assert.InRange(TimeOf(bench, Cue.StallStop), 29.5, 31);
    }

    private static BoardBench InAStall(PlanRecord plan, int pulses = 1)
    {
        BoardBench bench = new BoardBench();
        bench.Pulses.PulsesPerRevolution = pulses;
        bench.Pulses.Rpm = 700;
        bench.Start();
        bench.Memory.Settings.PlanNumber = (byte)bench.Memory.Plans.Put(plan);
        bench.Run(15);
        bench.Program.Levels.Forward = true;
        bench.Run(2);
        bench.Pulses.Rpm = 1900;
        return bench;
    }

    // Seconds after the run began: 0.4 s of power, 15 s to the lever, 2 s to the pedal.
    private static double TimeOf(BoardBench bench, Cue cue) =>
        (bench.Session().Events.First(one => one.Kind == EventKind.Cue && one.Value == (int)cue).Microseconds / 1e6) - 17.4;

    private static void Say(LoopbackPort port, Random chance)
    {
        switch (chance.Next(10))
        {
            case 0:
                port.Send(new SetClock { UtcSeconds = (uint)chance.NextInt64(uint.MaxValue) });
                break;
            case 1:
                port.Send(new SendPlan(AnyPlan(chance)));
                break;
            case 2:
                port.Send(new Hello { Version = LinkVersion.Current });
                break;
            case 3:
                port.Send(new Fetch { SessionNumber = 1, Length = 200, PayloadLength = 64 });
                break;
            case 4:
                port.Send(new Confirm { SessionNumber = 1 });
                break;
            case 5:
                port.Send(new List());
                break;
            case 6:
                port.Send(new Watch { IntervalMilliseconds = (ushort)chance.Next(500), ForSeconds = (byte)chance.Next(40) });
                break;
            case 7:
                port.Send(new SendCalibration { Channel = (byte)chance.Next(5), Kind = (ChannelKind)chance.Next(4), SpanCounts = chance.Next(), SpanPascal = chance.Next() });
                break;
            case 8:
                port.Send(new GetCalibration { Channel = (byte)chance.Next(5) });
                break;
            default:
                byte[] noise = new byte[chance.Next(20)];
                chance.NextBytes(noise);
                port.SendBytes(noise);
                break;
        }
    }

    private static PlanRecord AnyPlan(Random chance) => new()
    {
        Name = "sample truck",
        StallTargetMilliseconds = chance.Next(100000),
        StallWarnMilliseconds = chance.Next(100000),
        StallStopMilliseconds = chance.Next(100000),
        CooldownMilliseconds = chance.Next(100000),
        IdleMaxTenths = chance.Next(40000),
        HoldTenths = chance.Next(30000),
        HoldWindowTenths = chance.Next(3000),
    };

    private static RefusalReason Refused(PlanRecord plan)
    {
        using BoardBench bench = new BoardBench().Start();
        bench.Port.Send(new SendPlan(plan));
        bench.Run(0.1);
        Assert.Equal(0, bench.Memory.Plans.Count);
        return Assert.Single(bench.Port.Refusals);
    }
}
