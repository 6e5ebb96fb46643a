using System;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Checking;

/// <summary>Which limits of the sheet speak of which step.</summary>
public static class StepLimits
{
    /// <summary>Steps whose pressures a sheet can limit, in the order in which a report lists them.</summary>
    public static readonly Step[] PressureSteps =
    [
        Step.IdleNeutral, Step.IdleForward, Step.IdleReverse, Step.HoldNeutral, Step.HoldForward, Step.HoldReverse,
        Step.Governed, Step.Relief, Step.StallForward, Step.StallReverse,
    ];

    public static readonly Step[] InGearSteps = [Step.IdleInGear, Step.HoldInGear, Step.StallInGear];

    /// <summary>The step's own limits; where the gear is not known, those on which both directions agree.</summary>
    public static GearPressures Pressures(DataSheet sheet, Step step)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return step switch
        {
            Step.IdleNeutral => sheet.Idle.For(Gear.Neutral),
            Step.IdleForward => sheet.Idle.For(Gear.Forward),
            Step.IdleReverse => sheet.Idle.For(Gear.Reverse),
            Step.HoldNeutral => sheet.Hold.For(Gear.Neutral),
            Step.HoldForward => sheet.Hold.For(Gear.Forward),
            Step.HoldReverse => sheet.Hold.For(Gear.Reverse),
            Step.StallForward => sheet.Stall.For(Gear.Forward),
            Step.StallReverse => sheet.Stall.For(Gear.Reverse),
            Step.IdleInGear => Common(sheet.Idle),
            Step.HoldInGear => Common(sheet.Hold),
            Step.StallInGear => Common(sheet.Stall),
            _ => new GearPressures(),
        };
    }

    /// <summary>The row of the table by speed that is nearest to this speed, within the hold window; null where none is.</summary>
    public static PressuresAtSpeed? Row(DataSheet sheet, double rpm)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return sheet.AtSpeed
            .Where(row => Math.Abs(row.Rpm - rpm) <= sheet.HoldWindowRpm)
            .MinBy(row => Math.Abs(row.Rpm - rpm));
    }

    public static Limit? Of(GearPressures limits, int channel)
    {
        ArgumentNullException.ThrowIfNull(limits);
        return channel switch
        {
            Channel.Main => limits.Main,
            Channel.Clutch => limits.Clutch,
            Channel.Converter => limits.Converter,
            _ => null,
        };
    }

    public static Limit? Of(PressuresAtSpeed row, int channel, Step step)
    {
        ArgumentNullException.ThrowIfNull(row);
        return channel switch
        {
            Channel.Main => row.Main,
            Channel.Converter => row.Converter,
            Channel.Clutch when step is Step.IdleForward or Step.HoldForward or Step.StallForward => row.ClutchForward,
            Channel.Clutch when step is Step.IdleReverse or Step.HoldReverse or Step.StallReverse => row.ClutchReverse,
            Channel.Clutch when InGearSteps.Contains(step) && Limit.SameBounds(row.ClutchForward, row.ClutchReverse) => row.ClutchForward,
            _ => null,
        };
    }

    /// <summary>The step's own limit; where the sheet gives none, that of the table's row for this speed.</summary>
    public static Limit? Pressure(DataSheet sheet, Step step, int channel, double? rpm) =>
        Of(Pressures(sheet, step), channel) ?? (rpm is double speed && Row(sheet, speed) is { } row ? Of(row, channel, step) : null);

    private static GearPressures Common(PressureLimits limits)
    {
        var forward = limits.For(Gear.Forward);
        var reverse = limits.For(Gear.Reverse);
        return new GearPressures(
            Limit.SameBounds(forward.Main, reverse.Main) ? forward.Main : null,
            Limit.SameBounds(forward.Clutch, reverse.Clutch) ? forward.Clutch : null,
            Limit.SameBounds(forward.Converter, reverse.Converter) ? forward.Converter : null);
    }
}
