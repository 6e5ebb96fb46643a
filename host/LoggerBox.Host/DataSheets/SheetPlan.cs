using System;
using System.Linq;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.DataSheets;

/// <summary>Makes the logger's plan from a data sheet: integers in the logger's units, 0 where the sheet is silent.</summary>
public static class SheetPlan
{
    /// <param name="fuel">The fuel in use as the job names it; null takes the sheet's own.</param>
    /// <exception cref="UserErrorException">The sheet has tables by fuel, and none for this one.</exception>
    public static PlanRecord Make(DataSheet sheet, string? fuel = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        EngineLimits engine = sheet.EngineFor(fuel);
        var plan = new PlanRecord
        {
            Name = sheet.Truck.Length > 0 ? sheet.Truck : sheet.FileName,
            IdleMinTenths = Tenths(engine.IdleRpm?.Min),
            IdleMaxTenths = Tenths(engine.IdleRpm?.Max),
            ReliefDropMinTenths = Tenths(engine.ReliefDropRpm?.Min),
            ReliefDropMaxTenths = Tenths(engine.ReliefDropRpm?.Max),
            StallReverseForbidden = !sheet.StallReverseAllowed,
            HoldTenths = Tenths(sheet.HoldRpm),
            HoldWindowTenths = Tenths(sheet.HoldWindowRpm),
        };
        (plan.GovernedTenths, plan.GovernedToleranceTenths) = Middle(engine.GovernedRpm);
        (plan.StallForwardTenths, plan.StallForwardToleranceTenths) = Middle(engine.StallForwardRpm);
        (plan.StallReverseTenths, plan.StallReverseToleranceTenths) = Middle(engine.StallReverseRpm);
        SetPressures(plan, sheet);
        SetStallTimes(plan, sheet);
        if (sheet.PickupPulsesPerRevolution is double pulses)
        {
            (plan.PickupPulses, plan.PickupRevolutions) = PickupRatio.From(pulses);
        }

        return plan;
    }

    /// <summary>
    /// Middle and half-width, so that both bounds survive: the guards need the highest stall speed. A maximum alone stands for
    /// itself; a minimum alone tells no highest speed, so the guard keeps its default.
    /// </summary>
    private static (int Tenths, int Tolerance) Middle(Limit? limit) => limit switch
    {
        { Min: double min, Max: double max } => (Tenths((min + max) / 2), Tenths((max - min) / 2)),
        { Max: double max } => (Tenths(max), 0),
        { IsJudged: false, Nominal: double reference } => (Tenths(reference), 0),
        _ => (0, 0),
    };

    private static void SetPressures(PlanRecord plan, DataSheet sheet)
    {
        GearPressures?[] idle = [sheet.Idle.Neutral, sheet.Idle.Forward, sheet.Idle.Reverse];
        GearPressures?[] hold = [sheet.Hold.Neutral, sheet.Hold.Forward, sheet.Hold.Reverse];
        plan.MainIdleMinPascal = Pascal(sheet, idle.Min(gear => gear?.Main?.Min));
        plan.MainHoldMinPascal = Pascal(sheet, hold.Min(gear => gear?.Main?.Min));
        plan.MainHoldMaxPascal = Pascal(sheet, hold.Max(gear => gear?.Main?.Max));
        plan.ClutchIdleMinPascal = Pascal(sheet, idle.Skip(1).Min(gear => gear?.Clutch?.Min));
    }

    /// <summary>The default steps are 5, 8 and 10 s; a sheet's own limit moves warning and stop, and never makes the target later.</summary>
    private static void SetStallTimes(PlanRecord plan, DataSheet sheet)
    {
        if (sheet.StallLimitSeconds is double limit)
        {
            plan.StallStopMilliseconds = (int)Math.Round(limit * 1000);
            plan.StallWarnMilliseconds = (int)Math.Round(limit * 800);
            plan.StallTargetMilliseconds = Math.Min(plan.StallTargetMilliseconds, (int)Math.Round(limit * 600));
        }

        if (sheet.StallCooldownSeconds is double cooldown)
        {
            plan.CooldownMilliseconds = (int)Math.Round(cooldown * 1000);
        }
    }

    private static int Tenths(double? rpm) => rpm is double value ? (int)Math.Round(value * 10) : 0;

    private static int Pascal(DataSheet sheet, double? pressure) => pressure is double value ? (int)Math.Round(value * sheet.Unit.InPascal()) : 0;
}
