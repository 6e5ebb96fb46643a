using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>Tags that say neutral where a clutch is pressed, and a gear where none is.</summary>
public static class GearTags
{
    private const double Throughout = 0.6;

    public static CauseScore? Contradicted(Evidence evidence)
    {
        var tagged = evidence.Steps.All
            .Where(hold => hold is { Clutch: not null, Rpm.Value: > 300 } && Tag(hold) != Gear.Unknown)
            .ToList();
        var neutral = tagged.Where(hold => Tag(hold) == Gear.Neutral).ToList();
        var inGear = tagged.Where(hold => Tag(hold) != Gear.Neutral).ToList();
        int pressedInNeutral = neutral.Count(hold => !HoldGates.ClutchIsEmpty(hold));
        int emptyInGear = inGear.Count(HoldGates.ClutchIsEmpty);
        if (pressedInNeutral == 0 || emptyInGear == 0 || pressedInNeutral + emptyInGear < Throughout * tagged.Count)
        {
            return null;
        }

        return new CauseScore(
            Cause.GearTagWrong,
            9,
            -1,
            [$"Clutch pressure stands in {pressedInNeutral} of {neutral.Count} holds tagged N and is missing in {emptyInGear} of {inGear.Count} tagged F or R."],
            []);
    }

    private static Gear Tag(MeasuredHold hold) => hold.Step switch
    {
        Step.IdleForward or Step.HoldForward or Step.StallForward => Gear.Forward,
        Step.IdleReverse or Step.HoldReverse or Step.StallReverse => Gear.Reverse,
        Step.IdleNeutral or Step.HoldNeutral or Step.Governed or Step.Relief => Gear.Neutral,
        _ => hold.Gear,
    };
}
