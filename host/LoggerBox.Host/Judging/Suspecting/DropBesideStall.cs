using System;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// An engine that lacks torque drops farther over relief and stalls lower, both by what it lacks. One that drops far more than its stall says
/// has the torque: its governor does not give it.
/// </summary>
public static class DropBesideStall
{
    private const double FarMore = -3;

    /// <summary>Beyond what the missing torque makes; sheets and trucks differ by less.</summary>
    private const double Margin = 1.3;

    /// <summary>Lacking more than this an engine may not hold the work pump at any speed, and drops as far as it likes.</summary>
    private const double HoldsThePump = 0.35;

    /// <summary>What the drop says of a cause that takes torque.</summary>
    public static double Points(Evidence evidence, Roles roles)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(roles);
        if (evidence.ReliefDrop is not { } drop || evidence.Engine.ReliefDropRpm?.Max is not { } most
            || Lacking(roles, Step.StallForward, evidence.Engine.StallForwardRpm) is not { } forward
            || Lacking(roles, Step.StallReverse, evidence.Engine.StallReverseRpm) is not { } reverse)
        {
            return 0;
        }

        double lacking = Math.Max(forward, reverse);
        return lacking < HoldsThePump && drop.Value - drop.Expanded > Margin * most / (1 - lacking) ? FarMore : 0;
    }

    /// <summary>Part of the torque, at the most: of the best stall that the sheet allows.</summary>
    private static double? Lacking(Roles roles, Step step, Limit? limit) =>
        roles.Of(step)?.Rpm is { } stall && limit?.Max is { } best ? Math.Max(0, SiteAir.TorqueLossOf(1 - ((stall.Value - stall.Expanded) / best))) : null;
}
