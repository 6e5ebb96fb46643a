using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.Campaign;

/// <summary>The campaign's figures.</summary>
internal sealed class Tally
{
    public Tally(IReadOnlyList<Outcome> outcomes)
    {
        Faulty = [.. outcomes.Where(outcome => !outcome.Truck.IsHealthy)];
        Healthy = [.. outcomes.Where(outcome => outcome.Truck.IsHealthy)];
        Visible = [.. Faulty.Where(outcome => outcome.Visibility.IsVisible)];
        Verdicts = [.. outcomes.SelectMany(outcome => outcome.PlainVerdicts.Select(verdict => (outcome.Truck, verdict.Check, verdict.True)))];
        Wrong = [.. Verdicts.Where(verdict => Outcome.IsWrong((verdict.Check, verdict.True)))];
    }

    public IReadOnlyList<Outcome> Faulty { get; }

    public IReadOnlyList<Outcome> Healthy { get; }

    public IReadOnlyList<Outcome> Visible { get; }

    public IReadOnlyList<(TestedTruck Truck, Host.Judging.Check Check, double True)> Verdicts { get; }

    public IReadOnlyList<(TestedTruck Truck, Host.Judging.Check Check, double True)> Wrong { get; }

    /// <summary>Visible causes that do not stand in the first rank.</summary>
    public IEnumerable<Outcome> Missed => Visible.Where(outcome => outcome.Rank != 1);

    /// <summary>Visible causes that are not among the first three that are named.</summary>
    public IEnumerable<Outcome> FarMissed => Visible.Where(outcome => outcome.Place is < 1 or > 3);

    public IEnumerable<Outcome> Accused => Healthy.Where(outcome => outcome.Suspects.Count > 0);

    /// <summary>Nothing to be seen, and another cause named all the same.</summary>
    public IEnumerable<Outcome> Misled => Faulty.Where(outcome => !outcome.Visibility.IsVisible && outcome.Suspects.Count > 0 && outcome.Rank != 1);
}
