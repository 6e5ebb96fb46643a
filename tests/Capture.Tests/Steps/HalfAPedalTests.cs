using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Capture.Tests.Steps;

/// <summary>
/// What stands still above idle and is no step: warming up against the brake at 1200 to 1500 rpm (TM 10-3930-671-24 describes it so),
/// driving, cooling down at a fast idle in N. Full pedal lasts seconds (published limits of a stall: 5 to 30 s) and comes in one go.
/// </summary>
public class HalfAPedalTests
{
    private readonly NamedHolds holds = new();

    [Theory]
    [InlineData(1200)]
    [InlineData(1300)]
    [InlineData(1500)]
    public void Warming_up_in_gear_is_no_step(double rpm)
    {
        holds.Add(Gear.Neutral, 700);
        holds.Add(Gear.Forward, rpm, seconds: 40);
        holds.Add(Gear.Forward, 690);
        Assert.Equal(["idle-N", "", "idle-F"], holds.Names());
    }

    [Fact]
    public void Nor_is_it_where_a_wandering_foot_parts_it()
    {
        holds.Add(Gear.Forward, 1300, seconds: 9);
        holds.Add(Gear.Forward, 1340, directly: true, seconds: 9);
        holds.Add(Gear.Forward, 1310, directly: true, seconds: 3);
        Assert.Equal(["", "", ""], holds.Names());
    }

    [Fact]
    public void A_pedal_that_creeps_up_far_below_the_stall_makes_no_stall()
    {
        holds.Add(Gear.Forward, 1450, approachMilliseconds: 5200);
        holds.Add(Gear.Forward, 690);
        holds.Add(Gear.Forward, 1450, approachMilliseconds: 0);
        Assert.Equal(["", "idle-F", ""], holds.Names());
    }

    [Theory]
    [InlineData(1450)]
    [InlineData(1300)]
    public void A_weak_engine_or_a_slipping_stator_stalls_as_low_and_is_seen(double rpm)
    {
        holds.Add(Gear.Forward, 690);
        holds.Add(Gear.Forward, rpm, approachMilliseconds: 1400);
        holds.Add(Gear.Reverse, 690);
        holds.Add(Gear.Reverse, rpm + 5, seconds: 9, approachMilliseconds: 1400);
        Assert.Equal(["idle-F", "stall-F", "idle-R", "stall-R"], holds.Names());
    }

    [Fact]
    public void Beside_good_stalls_a_far_lower_one_is_half_a_pedal_whichever_came_last()
    {
        holds.Add(Gear.Neutral, 2450);
        holds.Add(Gear.Forward, 1890);
        holds.Add(Gear.Reverse, 1885);
        holds.Add(Gear.Forward, 1500, seconds: 8);
        Assert.Equal(["governed", "stall-F", "stall-R", ""], holds.Names());
    }

    [Fact]
    public void One_good_stall_does_not_outvote_two_low_ones()
    {
        holds.Add(Gear.Neutral, 2450);
        holds.Add(Gear.Forward, 1890);
        holds.Add(Gear.Forward, 1300);
        holds.Add(Gear.Reverse, 1300);
        Assert.Equal(["stall-F", "stall-R"], holds.Names()[2..]);
    }

    [Theory]
    [InlineData(40, 400)]
    [InlineData(8, 5200)]
    public void A_fast_idle_is_no_governed_speed_even_as_the_highest_out_of_gear(double seconds, int approachMilliseconds)
    {
        holds.Add(Gear.Neutral, 700);
        holds.Add(Gear.Neutral, 1400, seconds: seconds, approachMilliseconds: approachMilliseconds);
        holds.Add(Gear.Forward, 690);
        Assert.Equal(["idle-N", "", "idle-F"], holds.Names());
    }

    [Fact]
    public void Nor_where_the_engine_ran_faster_under_load()
    {
        holds.Add(Gear.Neutral, 1400);
        holds.Add(Gear.Forward, 1890);
        Assert.Equal(["", "stall-F"], holds.Names());
    }

    [Fact]
    public void A_fast_idle_that_is_lowered_is_no_relief()
    {
        holds.Add(Gear.Neutral, 1500, seconds: 30);
        holds.Add(Gear.Neutral, 1300, seconds: 30, directly: true);
        Assert.Equal(["", ""], holds.Names());
    }

    [Fact]
    public void Nor_where_a_gear_was_put_in_and_the_speed_stayed()
    {
        holds.Add(Gear.Neutral, 1500);
        holds.Add(Gear.Forward, 1490, directly: true);
        Assert.Equal("", holds.Names()[0]);
    }

    [Fact]
    public void Zero_is_known_by_the_stopped_engine_even_where_only_the_first_was_marked()
    {
        holds.Add(Gear.Neutral, 0, mark: Step.Zero);
        holds.Add(Gear.Neutral, 700);
        holds.Add(Gear.Neutral, 0);
        Assert.Equal(["zero", "idle-N", "zero"], holds.Names());
    }

    // A controller that holds an engine back stops it far below its governed speed; full pedal reaches that at once and stays for seconds.
    [Fact]
    public void An_engine_that_a_controller_holds_back_has_its_low_governed_speed()
    {
        holds.Add(Gear.Neutral, 700);
        holds.Add(Gear.Neutral, 1500);
        holds.Add(Gear.Neutral, 1430, directly: true);
        Assert.Equal(["idle-N", "governed", "relief"], holds.Names());
    }
}
