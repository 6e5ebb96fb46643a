using System;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// What a clutch holds of the main pressure that feeds it. With a plug missing next to nothing stands in it; a leak that lets plates drive leaves
/// more. Common practice, no source.
/// </summary>
public static class ClutchFilling
{
    private const double Hardly = 0.3;
    private const double LeastMainPascal = 50_000;

    /// <summary>Null where there is too little main pressure to say.</summary>
    public static double? Part(MeasuredHold hold)
    {
        ArgumentNullException.ThrowIfNull(hold);
        return hold.Main is { Value: > LeastMainPascal } main ? hold.Clutch?.Value / main.Value : null;
    }

    public static bool IsHardly(MeasuredHold hold) => Part(hold) < Hardly;

    /// <summary>The clutch that this cause empties holds pressure in one step or another.</summary>
    public static bool Holds(Roles roles, Cause cause)
    {
        ArgumentNullException.ThrowIfNull(roles);
        Step[] steps = cause == Cause.ReverseFeedOpen
            ? [Step.IdleReverse, Step.HoldReverse, Step.StallReverse]
            : [Step.IdleForward, Step.HoldForward, Step.StallForward];
        return steps.Select(roles.Of).Any(hold => hold is not null && Part(hold) >= Hardly);
    }
}
