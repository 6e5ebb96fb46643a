using System.Collections.Generic;
using LoggerBox.Host.DataSheets;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report.Card;

/// <summary>
/// The steps in the order that changes the set-up once and moves a hose as seldom as can be: with the wheels clear everything in gear that is
/// no stall, pressures before any stall; then the truck is let down. Where each clutch has a port of its own, the stalls begin with the hose
/// where the last hold left it.
/// </summary>
internal sealed class CardOrder(DataSheet sheet, EngineLimits engine, PlanRecord plan)
{
    private readonly CardTargets targets = new(sheet, engine, plan);
    private int number;

    public IReadOnlyList<CardStage> Stages() =>
    [
        new CardStage(CardWords.First, CardWords.FirstSetUp(sheet), []),
        new CardStage(CardWords.Clear, CardWords.ClearSetUp, [.. WheelsClear()]),
        new CardStage(CardWords.Down, CardWords.DownSetUp, [.. TruckDown()]),
    ];

    /// <summary>The direction whose stall is left out comes first, so that the hose ends on the other.</summary>
    private Gear[] Gears => sheet.ClutchPortPerGear && !sheet.StallReverseAllowed ? [Gear.Reverse, Gear.Forward] : [Gear.Forward, Gear.Reverse];

    private IEnumerable<CardStep> WheelsClear()
    {
        yield return Measured(Step.Zero);
        yield return Measured(Step.IdleNeutral);
        yield return Measured(Step.HoldNeutral);
        yield return Measured(IdleIn(Gears[0]));
        yield return Measured(HoldIn(Gears[0]));
        yield return CardTargets.BrakeWheels(sheet.ClutchPortPerGear ? Gears[1] : null);
        yield return Measured(IdleIn(Gears[1]));
        yield return Measured(HoldIn(Gears[1]));
    }

    private IEnumerable<CardStep> TruckDown()
    {
        yield return Measured(Step.Governed);
        yield return Measured(Step.Relief);
        Gear[] stalls = Stalls();
        for (int i = 0; i < stalls.Length; i++)
        {
            yield return Measured(StallIn(stalls[i]));
            yield return targets.CoolDown(sheet.ClutchPortPerGear && i + 1 < stalls.Length ? stalls[i + 1] : null);
        }

        if (!sheet.StallReverseAllowed)
        {
            yield return CardTargets.NoReverseStall();
        }

        yield return Measured(Step.Zero);
    }

    private Gear[] Stalls() => !sheet.StallReverseAllowed ? [Gear.Forward] : sheet.ClutchPortPerGear ? [Gears[1], Gears[0]] : Gears;

    private CardStep Measured(Step step) => targets.Of(step, ++number);

    private static Step IdleIn(Gear gear) => gear == Gear.Forward ? Step.IdleForward : Step.IdleReverse;

    private static Step HoldIn(Gear gear) => gear == Gear.Forward ? Step.HoldForward : Step.HoldReverse;

    private static Step StallIn(Gear gear) => gear == Gear.Forward ? Step.StallForward : Step.StallReverse;
}
