using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// A pump that turns too slowly gives too little: where idle speed itself is off, pressures at idle that are off the same way accuse nobody
/// else.
/// </summary>
public static class IdleSpeed
{
    private static readonly Observation[] AtIdle =
    [
        Observation.MainIdleNeutral, Observation.MainIdleForward, Observation.MainIdleReverse, Observation.ClutchIdleForward,
        Observation.ClutchIdleReverse, Observation.MainIdleAgainstHold, Observation.ConverterIdleAgainstHold,
    ];

    public static List<Observed> WithoutWhatItExplains(List<Observed> observations)
    {
        ArgumentNullException.ThrowIfNull(observations);
        var idle = observations.Find(seen => seen.Observation == Observation.IdleSpeed && seen.Telling);
        return idle is null ? observations : observations.Where(seen => !AtIdle.Contains(seen.Observation) || !SameWay(idle, seen)).ToList();
    }

    private static bool SameWay(Observed idle, Observed seen) => Math.Sign(idle.Strongest - Level.Normal) == Math.Sign(seen.Strongest - Level.Normal);
}
