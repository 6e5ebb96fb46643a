using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// Who is suspected, in order. Nobody is without a reading that is off beyond its uncertainty, or a difference of practical size.
/// </summary>
public static class SuspectList
{
    /// <summary>Causes within this many points of the first of their rank cannot be told apart.</summary>
    private const double Indistinguishable = 0.8;

    /// <summary>Nor can those that the readings fit alike, however much more common one of them is.</summary>
    private const double FitAlike = 0.3;

    /// <summary>Farther behind the best than this a cause is not worth a look.</summary>
    private const double WorthALook = 3.5;

    private const int SharingARank = 3;
    private const int Longest = 6;

    public static IReadOnlyList<Suspect> Of(Evidence evidence, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        if (!evidence.Steps.All.Any(hold => hold.Step is not (Step.None or Step.Zero)))
        {
            // Pressures at a bench, or an engine that was never started: nothing of a truck was tested.
            return [];
        }

        List<Suspect> suspects = Explaining(evidence, unit);
        if (ZeroShift.Find(evidence, unit) is { } shift)
        {
            suspects.Add(Behind(suspects, shift));
        }

        return suspects;
    }

    /// <summary>An engine-off reading is subtracted: it is a fault of its own and explains no reading, so it stands behind what does.</summary>
    private static Suspect Behind(List<Suspect> suspects, CauseScore shift)
    {
        double score = suspects.Count == 0 ? Math.Exp(shift.Points) / (1 + Math.Exp(shift.Points)) : suspects.Min(suspect => suspect.Score) / 2;
        int rank = suspects.Count == 0 ? 1 : suspects.Max(suspect => suspect.Rank) + 1;
        return new Suspect(CauseCodes.Text(shift.Cause), rank, score, shift.For, shift.Against, Sentences.NextCheck(shift.Cause));
    }

    private static List<Suspect> Explaining(Evidence evidence, PressureUnit unit)
    {
        var faults = MeasuringFaults.Of(evidence, unit);
        if (faults.Count > 0)
        {
            return Ranked(faults.OrderByDescending(fault => fault.Points).ToList(), new Readings([], false));
        }

        var roles = new Roles(evidence.Steps);
        var observations = SpeedObservations.Of(evidence, roles)
            .Concat(PressureObservations.Of(evidence, roles, unit))
            .Concat(InOneSession(evidence, one => PressuresOverSpeed.Of(one, unit)))
            .Concat(InOneSession(evidence, one => DifferenceObservations.Of(one, new Roles(one.Steps), unit)))
            .Concat(InOneSession(evidence, one => [SpeedObservations.StallDifference(new Roles(one.Steps)), EngagementObservations.Difference(one)]))
            .Concat(EngagementObservations.Of(evidence, roles))
            .OfType<Observed>()
            .ToList();
        observations = IdleSpeed.WithoutWhatItExplains(observations, evidence, roles);
        var accusing = observations.Where(seen => seen.Accuses).ToList();
        if (accusing.Count == 0)
        {
            return [];
        }

        // A cause that explains none of what accuses is not worth a look, whatever else leans its way.
        var scores = CauseScoring.Of(observations, evidence, roles)
            .Where(score => score.For.Count > 0 && accusing.Exists(seen => seen.Points(score.Row) > 0));
        List<CauseScore> ordered = [.. scores.OrderByDescending(score => score.Points)];
        if (ordered.Count > 0 && PickupRatio.Possible(evidence, ordered[0]) is { } pickup)
        {
            ordered.Insert(1, pickup);
        }

        return Ranked(ordered, new Readings(observations, roles.GearsUnknown));
    }

    /// <summary>What is seen by comparing steps: of two sessions it would compare two states of the truck. The newest session that shows it counts.</summary>
    private static IEnumerable<Observed> InOneSession(Evidence evidence, Func<Evidence, IEnumerable<Observed?>> compare) =>
        evidence.BySession.SelectMany(compare).OfType<Observed>().DistinctBy(seen => seen.Observation);

    private static List<Suspect> Ranked(List<CauseScore> scores, Readings readings)
    {
        var suspects = new List<Suspect>();
        if (scores.Count == 0)
        {
            return suspects;
        }

        List<CauseScore> beside = scores[0].Cause == Cause.OilCold ? [.. ColdOil.Unexplained(scores[0], scores, readings.Observations)] : [];
        var near = scores.Where(score => score.Points > scores[0].Points - WorthALook || beside.Contains(score)).Take(Longest).ToList();
        var kept = scores.Where(score => near.Contains(score) || near.Exists(twin => readings.Join(twin, score))).ToList();

        // Sound readings stand in with 0 points: a weak fit stays a weak belief.
        double total = 1 + kept.Sum(score => Math.Exp(Math.Min(score.Points, 50)));
        int rank = 0;
        while (kept.Count > 0)
        {
            rank++;
            foreach (var score in OfOneRank(kept, readings))
            {
                suspects.Add(new Suspect(
                    CauseCodes.Text(score.Cause), rank, Math.Exp(Math.Min(score.Points, 50)) / total, score.For, score.Against, Sentences.NextCheck(score.Cause)));
                kept.Remove(score);
            }
        }

        return suspects;
    }

    /// <summary>The best of what is left and those that cannot be told from it; the ones that no reading parts come before mere neighbours.</summary>
    private static List<CauseScore> OfOneRank(List<CauseScore> left, Readings readings)
    {
        var first = left[0];
        var sharing = left.Skip(1)
            .Where(score => !IsApart(first, score, readings))
            .OrderByDescending(score => score.Cause == Cause.PickupScale || readings.Mirror(first, score) || readings.Join(first, score))
            .ThenByDescending(score => score.Points)
            .Take(SharingARank - 1)
            .OrderByDescending(score => score.Points)
            .Prepend(first)
            .ToList();

        // Where the gear is not known, nothing tells one direction's cause from the other's: they stand together or wait together.
        return sharing.Where(score => score == first || !left.Exists(other => readings.Mirror(score, other) && !sharing.Contains(other))).ToList();
    }

    private static bool IsApart(CauseScore first, CauseScore score, Readings readings) =>
        first.Points - score.Points > Indistinguishable && first.Fit - score.Fit > FitAlike && !readings.Join(first, score);

    /// <summary>What was seen, as far as it joins causes.</summary>
    private sealed record Readings(IReadOnlyList<Observed> Observations, bool GearsUnknown)
    {
        public bool Join(CauseScore one, CauseScore other) => Ties.Joins(one.Cause, other.Cause, Observations, GearsUnknown);

        public bool Mirror(CauseScore one, CauseScore other) => GearsUnknown && MirrorCauses.Of(one.Cause) == other.Cause;
    }
}
