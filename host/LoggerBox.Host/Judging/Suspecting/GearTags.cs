using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>Tags that say neutral where a clutch is pressed, and a gear where none is.</summary>
public static class GearTags
{
    private const double Throughout = 0.3;

    public static CauseScore? Contradicted(Evidence evidence)
    {
        var tagged = evidence.Steps.All
            .Where(hold => hold is { Clutch: not null, Rpm.Value: > 300 } && Tag(hold) != Gear.Unknown)
            .ToList();
        var neutral = tagged.Where(hold => Tag(hold) == Gear.Neutral).ToList();
        int pressedInNeutral = neutral.Count(hold => !HoldGates.ClutchIsEmpty(hold));
        var inGear = tagged.Where(hold => Tag(hold) != Gear.Neutral).ToList();
        int emptyInGear = inGear.Count(HoldGates.ClutchIsEmpty);
        int contradictions = pressedInNeutral + emptyInGear;
        bool bothWays = pressedInNeutral > 0 && emptyInGear > 0;
        if (contradictions < 3 || contradictions < Throughout * tagged.Count
            || !(bothWays || ComesAndGoes(neutral) || ComesAndGoes(inGear.Where(NoStall).ToList())))
        {
            return null;
        }

        return new CauseScore(
            Cause.GearTagWrong,
            9,
            -1,
            [Sentences.TagsContradicted(pressedInNeutral, neutral.Count, emptyInGear, inGear.Count)],
            []);
    }

    /// <summary>Pressed and empty by turns under one tag: no fault in the truck does that.</summary>
    private static bool ComesAndGoes(List<MeasuredHold> holds) =>
        holds.Count(HoldGates.ClutchIsEmpty) >= 2 && holds.Count(hold => !HoldGates.ClutchIsEmpty(hold)) >= 2
        && holds.Select(Tag).Distinct().Count() == 1;

    private static bool NoStall(MeasuredHold hold) => !HoldGates.IsStall(hold.Step);

    private static Gear Tag(MeasuredHold hold) => hold.Gear != Gear.Unknown ? hold.Gear : hold.Step switch
    {
        Step.IdleForward or Step.HoldForward or Step.StallForward => Gear.Forward,
        Step.IdleReverse or Step.HoldReverse or Step.StallReverse => Gear.Reverse,
        Step.IdleNeutral or Step.HoldNeutral or Step.Governed or Step.Relief => Gear.Neutral,
        _ => hold.Gear,
    };
}
