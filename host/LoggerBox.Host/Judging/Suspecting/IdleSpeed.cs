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
        var sagging = InGear.Where(gear => IsSagging(roles.Of(gear.Step)?.Rpm, evidence.Engine.IdleRpm?.Min)).ToList();
        if (idle is null && sagging.Count > 0)
        {
            observations = [Sag(sagging[0].Step, evidence, roles), .. observations.Where(seen => seen.Observation != Observation.IdleSpeed)];
        }

        return observations
            .Where(seen => idle is null || !AtIdle.Contains(seen.Observation) || !SameWay(idle, seen))
            .Where(seen => seen.Strongest >= Level.Normal || !sagging.Exists(gear => gear.Seen.Contains(seen.Observation)))
            .ToList();
    }

    /// <summary>The engine's weakness shows in gear, where it has something to drive.</summary>
    private static Observed Sag(Step step, Evidence evidence, Roles roles) => new(
        Observation.IdleSpeed,
        [0, 1, 0, 0, 0],
        true,
        Sentences.IdleSags(roles.Name(step), roles.Of(step)!.Rpm!.Value, evidence.Engine.IdleRpm!.Min!.Value));

    /// <summary>In N it may idle well, and be pulled down by the converter alone.</summary>
    private static bool IsSagging(Measured? rpm, double? least) => rpm is not null && rpm.Value + rpm.Expanded < Sagging * least;

    private static bool SameWay(Observed idle, Observed seen) => Math.Sign(idle.Strongest - Level.Normal) == Math.Sign(seen.Strongest - Level.Normal);
}
