using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// What the oil's temperature says for and against oil that was too cold. The colder, the likelier; but cold oil raises pressures and slows
/// engagements, it lowers no governed speed and a stall only a little: what it does not do stays with the cause that does.
/// </summary>
public static class ColdOil
{
    /// <summary>Of warm oil: beyond doubt not cold.</summary>
    private const double Warm = -5;

    private const double Cold = 6;

    /// <summary>So much colder, and the oil is about twice as thick (Walther's line of a usual automatic fluid), °C.</summary>
    private const double TwiceAsThick = 15;

    /// <summary>Where nothing is off that cold oil is known for, it stands beside the suspects and hides none.</summary>
    private const double Beside = 1.5;

    public static double Points(Evidence evidence, IReadOnlyList<Observed> accusing, int row)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(accusing);
        if (SessionNotes.OilCelsius(evidence) is not { } oil)
        {
            return 0;
        }

        double shortfall = OilWindow.Shortfall(oil, evidence.Sheet.OilCelsius);
        double points = shortfall == 0 ? Warm : Cold * Math.Min(1, shortfall / TwiceAsThick);
        return accusing.Any(seen => IsTypical(seen, row)) ? points : Math.Min(points, Beside);
    }

    /// <summary>For each reading that accuses and that cold oil does not explain, the cause that explains it best.</summary>
    /// <param name="scores">The best first.</param>
    public static IEnumerable<CauseScore> Unexplained(CauseScore cold, IReadOnlyList<CauseScore> scores, IReadOnlyList<Observed> observations)
    {
        ArgumentNullException.ThrowIfNull(cold);
        ArgumentNullException.ThrowIfNull(scores);
        ArgumentNullException.ThrowIfNull(observations);
        return observations
            .Where(seen => seen.Accuses && seen.Points(cold.Row) <= 0)
            .Select(seen => scores.FirstOrDefault(score => score.Row >= 0 && seen.Points(score.Row) > 0))
            .OfType<CauseScore>()
            .Distinct();
    }

    private static bool IsTypical(Observed seen, int row) =>
        seen.Strongest > Level.Normal && seen.Points(row) > 0 && seen.Observation is not (Observation.ReliefDrop or Observation.RunUpTime);
}
