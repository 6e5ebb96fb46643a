using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// Causes that speed and three pressures cannot tell apart, and the readings that would part them if one of those were off.
/// Reasoned from the circuit and from common practice, no published source.
/// </summary>
public static class Ties
{
    private static readonly (Cause[] Causes, Observation[] PartedBy)[] Groups =
    [
        // Converter starved in every gear: worn pump or open outlet, until the pump is so weak that main falls as well.
        ([Cause.ConverterReliefOpen, Cause.LubePlugMissing, Cause.PumpWorn],
            [Observation.MainIdleNeutral, Observation.MainIdleForward, Observation.MainIdleReverse,
                Observation.MainHoldNeutral, Observation.MainHoldForward, Observation.MainHoldReverse]),
    ];

    public static bool Joins(Cause one, Cause other, IReadOnlyList<Observed> observations)
    {
        ArgumentNullException.ThrowIfNull(observations);
        return Groups.Any(group => group.Causes.Contains(one) && group.Causes.Contains(other)
            && observations.All(seen => !group.PartedBy.Contains(seen.Observation) || seen.Strongest == Level.Normal));
    }
}
