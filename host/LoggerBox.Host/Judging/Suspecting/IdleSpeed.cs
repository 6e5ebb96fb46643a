using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// A pump that turns too slowly gives too little: where idle speed itself is off, in N or as soon as a gear is in, pressures at idle that are
/// off the same way accuse nobody else.
/// </summary>
public static class IdleSpeed
{
    private static readonly Observation[] AtIdle =
    [
        Observation.MainIdleNeutral, Observation.MainIdleForward, Observation.MainIdleReverse, Observation.ClutchIdleForward,
        Observation.ClutchIdleReverse, Observation.MainIdleAgainstHold, Observation.ConverterIdleAgainstHold,
    ];

    private static readonly (Step Step, Observation[] Seen)[] InGear =
    [
        (Step.IdleForward, [Observation.MainIdleForward, Observation.ClutchIdleForward]),
        (Step.IdleReverse, [Observation.MainIdleReverse, Observation.ClutchIdleReverse]),
    ];

    /// <summary>Of the lowest idle in the sheet: a sound engine that a converter loads stands nearer. Common practice, no source.</summary>
    private const double Sagging = 0.9;

    public static List<Observed> WithoutWhatItExplains(List<Observed> observations, Evidence evidence, Roles roles)
    {
        ArgumentNullException.ThrowIfNull(observations);
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(roles);
        var idle = observations.Find(seen => seen.Observation == Observation.IdleSpeed && seen.Telling);
        var sagging = InGear.Where(gear => IsSagging(roles.Of(gear.Step)?.Rpm, evidence.Engine.IdleRpm?.Min)).SelectMany(gear => gear.Seen).ToList();
        return observations
            .Where(seen => idle is null || !AtIdle.Contains(seen.Observation) || !SameWay(idle, seen))
            .Where(seen => !sagging.Contains(seen.Observation) || seen.Strongest >= Level.Normal)
            .ToList();
    }

    /// <summary>In N it may idle well, and be pulled down by the converter alone.</summary>
    private static bool IsSagging(Measured? rpm, double? least) => rpm is not null && rpm.Value + rpm.Expanded < Sagging * least;

    private static bool SameWay(Observed idle, Observed seen) => Math.Sign(idle.Strongest - Level.Normal) == Math.Sign(seen.Strongest - Level.Normal);
}
