using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Capture.Tests.Steps;

public class StepNamingTests
{
    private static readonly PlanRecord Plan = new()
    {
        IdleMinTenths = 6400,
        IdleMaxTenths = 7600,
        GovernedTenths = 24500,
        GovernedToleranceTenths = 600,
        StallForwardTenths = 19400,
        StallForwardToleranceTenths = 1200,
        StallReverseTenths = 19400,
        StallReverseToleranceTenths = 1200,
    };

    private readonly List<HoldRecord> holds = [];

    [Fact]
    public void A_whole_test_without_marks_is_named_from_gear_and_speed()
    {
        Add(Gear.Neutral, 0);
        Add(Gear.Neutral, 700);
        Add(Gear.Forward, 690);
        Add(Gear.Reverse, 690);
        Add(Gear.Neutral, 2005, peak: 2110);
        Add(Gear.Forward, 2010, peak: 2100);
        Add(Gear.Reverse, 1990, peak: 2090);
        Add(Gear.Neutral, 2450);
        Add(Gear.Neutral, 2310, directly: true);
        Add(Gear.Forward, 1890);
        Add(Gear.Neutral, 1200);
        Add(Gear.Reverse, 1900);
        Assert.Equal(
            ["zero", "idle-N", "idle-F", "idle-R", "hold-N", "hold-F", "hold-R", "governed", "relief", "stall-F", "", "stall-R"],
            Names());
    }

    [Fact]
    public void A_stall_at_the_hold_speed_is_known_by_coming_up_from_below()
    {
        Add(Gear.Forward, 2000, peak: 2110);
        Add(Gear.Neutral, 2450);
        Add(Gear.Forward, 1995, peak: 2005);
        Assert.Equal(["hold-F", "governed", "stall-F"], Names());
    }

    [Fact]
    public void A_stall_of_a_slipping_stator_close_above_idle_is_a_stall()
    {
        Add(Gear.Forward, 700);
        Add(Gear.Forward, 1280);
        Assert.Equal(["idle-F", "stall-F"], Names());
    }

    [Fact]
    public void Governed_near_the_hold_speed_is_known_by_the_relief_that_follows()
    {
        Add(Gear.Neutral, 700);
        Add(Gear.Neutral, 2060);
        Add(Gear.Neutral, 1880, directly: true);
        Assert.Equal(["idle-N", "governed", "relief"], Names());
    }

    [Fact]
    public void An_engine_held_back_below_the_hold_speed_has_its_governed_speed_where_it_stalled()
    {
        Add(Gear.Neutral, 0);
        Add(Gear.Neutral, 1863);
        Add(Gear.Forward, 1857);
        Add(Gear.Neutral, 0);
        Add(Gear.Neutral, 1863);
        Add(Gear.Forward, 1742);
        Add(Gear.Reverse, 1743);
        Assert.Equal(["zero", "hold-N", "hold-F", "zero", "governed", "stall-F", "stall-R"], Names());
    }

    [Theory]
    [InlineData(1990)]
    [InlineData(2060)]
    public void A_hold_in_its_window_beside_the_stalls_is_no_governed_speed(double speed)
    {
        Add(Gear.Neutral, 0);
        Add(Gear.Neutral, 2010, peak: 2110);
        Add(Gear.Forward, 2010, peak: 2110);
        Add(Gear.Neutral, 0);
        Add(Gear.Neutral, speed, peak: 2150);
        Add(Gear.Forward, 1895);
        Assert.Equal("hold-N", Names()[4]);
    }

    [Fact]
    public void An_engine_that_never_reaches_the_hold_speed_has_its_governed_speed_in_the_window_even()
    {
        Add(Gear.Neutral, 0);
        Add(Gear.Neutral, 1964);
        Add(Gear.Forward, 1945);
        Add(Gear.Neutral, 0);
        Add(Gear.Neutral, 1966);
        Add(Gear.Forward, 1756);
        Add(Gear.Reverse, 1764);
        Assert.Equal(["zero", "hold-N", "hold-F", "zero", "governed", "stall-F", "stall-R"], Names());
    }

    [Fact]
    public void A_foot_that_wanders_parts_a_hold_into_two_of_the_same_name()
    {
        Add(Gear.Neutral, 2450);
        Add(Gear.Reverse, 2030, peak: 2150, seconds: 1.5);
        Add(Gear.Reverse, 2008, peak: 2030, directly: true);
        Assert.Equal(["governed", "hold-R", "hold-R"], Names());
    }

    [Theory]
    [InlineData(2.0)]
    [InlineData(0.5)]
    public void With_a_wrong_pickup_scale_the_steps_are_named_all_the_same(double scale)
    {
        Add(Gear.Neutral, 700 * scale);
        Add(Gear.Forward, 2000 * scale, peak: 2100 * scale);
        Add(Gear.Neutral, 2450 * scale);
        Add(Gear.Neutral, 2300 * scale, directly: true);
        Add(Gear.Forward, 1900 * scale);
        Assert.Equal(["idle-N", "hold-F", "governed", "relief", "stall-F"], Names());
    }

    [Fact]
    public void Without_tag_and_mark_clutch_pressure_tells_that_a_gear_is_in_but_not_which()
    {
        Add(Gear.Unknown, 700);
        Add(Gear.Unknown, 700, pressed: true);
        Add(Gear.Unknown, 2005, peak: 2100, pressed: true);
        Add(Gear.Unknown, 2450);
        Add(Gear.Unknown, 1850, pressed: true);
        Assert.Equal(["idle-N", "idle", "hold", "governed", "stall"], Names());
    }

    [Fact]
    public void What_the_operator_marked_stands_and_is_never_guessed_beside_it()
    {
        Add(Gear.Neutral, 700);
        Add(Gear.Neutral, 705, mark: Step.IdleNeutral);
        Add(Gear.Forward, 1900, mark: Step.StallForward);
        Add(Gear.Forward, 1890);
        Assert.Equal(["", "idle-N", "stall-F", ""], Names());
    }

    private void Add(
        Gear gear, double rpm, double? peak = null, bool directly = false, bool pressed = false, double seconds = 5, Step mark = Step.None)
    {
        HoldRecord? before = holds.LastOrDefault();
        long after = before is null ? 0 : before.StartMicroseconds + (before.DurationMilliseconds * 1000L);
        HoldRecord hold = new()
        {
            StartMicroseconds = after + (directly ? 600000 : 12000000),
            DurationMilliseconds = (int)(seconds * 1000),
            Gear = gear,
            Step = mark,
            Marked = mark != Step.None,
            ClutchPressed = pressed || gear is Gear.Forward or Gear.Reverse,
            ApproachFromTenths = directly ? before!.Readings[Channel.Speed].SettledHundredths / 100 : 7000,
            ApproachMilliseconds = rpm > 1000 && !directly ? 400 : 0,
        };
        hold.Readings[Channel.Speed].Present = true;
        hold.Readings[Channel.Speed].SettledHundredths = (int)(rpm * 1000);
        hold.Readings[Channel.Speed].Peak = (int)((peak ?? (rpm * 1.005)) * 10);
        holds.Add(hold);
    }

    private string[] Names()
    {
        var names = new Step[holds.Count];
        StepNaming.Name([.. holds], holds.Count, Plan, names);
        return names.Select(StepCodes.Text).ToArray();
    }
}
