using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Capture.Tests.Steps;

public class StepNamingTests
{
    private readonly NamedHolds holds = new();

    [Fact]
    public void A_whole_test_without_marks_is_named_from_gear_and_speed()
    {
        holds.Add(Gear.Neutral, 0);
        holds.Add(Gear.Neutral, 700);
        holds.Add(Gear.Forward, 690);
        holds.Add(Gear.Reverse, 690);
        holds.Add(Gear.Neutral, 2005, peak: 2110);
        holds.Add(Gear.Forward, 2010, peak: 2100);
        holds.Add(Gear.Reverse, 1990, peak: 2090);
        holds.Add(Gear.Neutral, 2450);
        holds.Add(Gear.Neutral, 2310, directly: true);
        holds.Add(Gear.Forward, 1890);
        holds.Add(Gear.Neutral, 1200);
        holds.Add(Gear.Reverse, 1900);
        Assert.Equal(
            ["zero", "idle-N", "idle-F", "idle-R", "hold-N", "hold-F", "hold-R", "governed", "relief", "stall-F", "", "stall-R"],
            holds.Names());
    }

    [Fact]
    public void A_stall_at_the_hold_speed_is_known_by_coming_up_from_below()
    {
        holds.Add(Gear.Forward, 2000, peak: 2110);
        holds.Add(Gear.Neutral, 2450);
        holds.Add(Gear.Forward, 1995, peak: 2005);
        Assert.Equal(["hold-F", "governed", "stall-F"], holds.Names());
    }

    [Fact]
    public void A_stall_of_a_slipping_stator_close_above_idle_is_a_stall()
    {
        holds.Add(Gear.Forward, 700);
        holds.Add(Gear.Forward, 1280);
        Assert.Equal(["idle-F", "stall-F"], holds.Names());
    }

    [Fact]
    public void Governed_near_the_hold_speed_is_known_by_the_relief_that_follows()
    {
        holds.Add(Gear.Neutral, 700);
        holds.Add(Gear.Neutral, 2060);
        holds.Add(Gear.Neutral, 1880, directly: true);
        Assert.Equal(["idle-N", "governed", "relief"], holds.Names());
    }

    [Fact]
    public void An_engine_held_back_below_the_hold_speed_has_its_governed_speed_where_it_stalled()
    {
        holds.Add(Gear.Neutral, 0);
        holds.Add(Gear.Neutral, 1863);
        holds.Add(Gear.Forward, 1857);
        holds.Add(Gear.Neutral, 0);
        holds.Add(Gear.Neutral, 1863);
        holds.Add(Gear.Forward, 1742);
        holds.Add(Gear.Reverse, 1743);
        Assert.Equal(["zero", "hold-N", "hold-F", "zero", "governed", "stall-F", "stall-R"], holds.Names());
    }

    [Theory]
    [InlineData(1990)]
    [InlineData(2060)]
    public void A_hold_in_its_window_beside_the_stalls_is_no_governed_speed(double speed)
    {
        holds.Add(Gear.Neutral, 0);
        holds.Add(Gear.Neutral, 2010, peak: 2110);
        holds.Add(Gear.Forward, 2010, peak: 2110);
        holds.Add(Gear.Neutral, 0);
        holds.Add(Gear.Neutral, speed, peak: 2150);
        holds.Add(Gear.Forward, 1895);
        Assert.Equal("hold-N", holds.Names()[4]);
    }

    [Fact]
    public void An_engine_that_never_reaches_the_hold_speed_has_its_governed_speed_in_the_window_even()
    {
        holds.Add(Gear.Neutral, 0);
        holds.Add(Gear.Neutral, 1964);
        holds.Add(Gear.Forward, 1945);
        holds.Add(Gear.Neutral, 0);
        holds.Add(Gear.Neutral, 1966);
        holds.Add(Gear.Forward, 1756);
        holds.Add(Gear.Reverse, 1764);
        Assert.Equal(["zero", "hold-N", "hold-F", "zero", "governed", "stall-F", "stall-R"], holds.Names());
    }

    [Fact]
    public void A_foot_that_wanders_parts_a_hold_into_two_of_the_same_name()
    {
        holds.Add(Gear.Neutral, 2450);
        holds.Add(Gear.Reverse, 2030, peak: 2150, seconds: 1.5);
        holds.Add(Gear.Reverse, 2008, peak: 2030, directly: true);
        Assert.Equal(["governed", "hold-R", "hold-R"], holds.Names());
    }

    [Theory]
    [InlineData(2.0)]
    [InlineData(0.5)]
    public void With_a_wrong_pickup_scale_the_steps_are_named_all_the_same(double scale)
    {
        holds.Add(Gear.Neutral, 700 * scale);
        holds.Add(Gear.Forward, 2000 * scale, peak: 2100 * scale);
        holds.Add(Gear.Neutral, 2450 * scale);
        holds.Add(Gear.Neutral, 2300 * scale, directly: true);
        holds.Add(Gear.Forward, 1900 * scale);
        Assert.Equal(["idle-N", "hold-F", "governed", "relief", "stall-F"], holds.Names());
    }

    [Fact]
    public void Without_tag_and_mark_clutch_pressure_tells_that_a_gear_is_in_but_not_which()
    {
        holds.Add(Gear.Unknown, 700);
        holds.Add(Gear.Unknown, 700, pressed: true);
        holds.Add(Gear.Unknown, 2005, peak: 2100, pressed: true);
        holds.Add(Gear.Unknown, 2450);
        holds.Add(Gear.Unknown, 1850, pressed: true);
        Assert.Equal(["idle-N", "idle", "hold", "governed", "stall"], holds.Names());
    }

    [Fact]
    public void What_the_operator_marked_stands_and_is_never_guessed_beside_it()
    {
        holds.Add(Gear.Neutral, 700);
        holds.Add(Gear.Neutral, 705, mark: Step.IdleNeutral);
        holds.Add(Gear.Forward, 1900, mark: Step.StallForward);
        holds.Add(Gear.Forward, 1890);
        Assert.Equal(["", "idle-N", "stall-F", ""], holds.Names());
    }
}
