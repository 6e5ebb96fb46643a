using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>Sessions whose gear nobody marked: what can be said is said, the rest is told as missing.</summary>
public sealed class GearsUnknown
{
    [Fact]
    public void A_hold_in_gear_outside_its_speed_window_is_void_too()
    {
        var session = new TestSession { GearsKnown = false }.Set(Step.HoldForward, rpm: 1850).Set(Step.HoldReverse, rpm: 1850);
        var judgement = Judged.Of(session);
        Assert.Equal([Verdict.Void, Verdict.Void, Verdict.Void], judgement.Checks.Where(check => check.Step == "hold").Select(check => check.Verdict));
        Assert.DoesNotContain(judgement.Checks, check => check.Step is "hold-F" or "hold-R");
        Assert.Contains(judgement.Validity, note => note is { Code: HoldGates.SpeedWindow, Effect: ValidityEffect.Void, Step: Step.HoldInGear });
    }

    [Fact]
    public void Limits_of_both_directions_that_are_equal_judge_in_whatever_line_they_stand()
    {
        var judgement = Judged.Of(new TestSession { GearsKnown = false }, TestSheet.Truck(stallReverse: new Limit(1690, 1910, null, 7)));
        Assert.Equal([Verdict.In, Verdict.In], judgement.Checks.Where(check => check is { Step: "stall", Quantity: "rpm" }).Select(check => check.Verdict));
        var byLine = new DataSheet
        {
            FileName = "lines.toml",
            Unit = PressureUnit.Psi,
            Hold = new PressureLimits(null, new GearPressures(Clutch: new Limit(124, 185, null, 3)), new GearPressures(Clutch: new Limit(124, 185, null, 5))),
        };
        Assert.Equal([Verdict.In, Verdict.In], Judged.Of(new TestSession { GearsKnown = false }, byLine).Checks.Where(check => check is { Step: "hold", Quantity: "clutch" }).Select(check => check.Verdict));
    }

    [Fact]
    public void One_direction_alone_is_told_as_incomplete()
    {
        var both = Judged.Of(new TestSession { GearsKnown = false });
        Assert.DoesNotContain(both.Validity, note => note.Code == "incomplete");
        var one = Judged.Of(new TestSession { GearsKnown = false }.Without(Step.HoldForward).Without(Step.StallReverse));
        Assert.Equal([Step.HoldInGear, Step.StallInGear], one.Validity.Where(note => note.Code == "incomplete").Select(note => note.Step));
    }
}
