using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.FromJobs;

namespace LoggerBox.Host.Comparing;

/// <summary>One visit of a truck: a job with its date, the hour meter where it is known, and what was measured, pressures in kPa.</summary>
public sealed record Visit(string Id, DateTimeOffset Date, double? Hours, IReadOnlyDictionary<string, SheetReading> Readings);

/// <summary>One reading over all visits that have it, in order of time.</summary>
/// <param name="Place">As a sheet names it: "pressure.hold.forward.clutch".</param>
/// <param name="Uncertainty">Of the change, expanded: the root of the squares of the first and the last.</param>
/// <param name="Slope">A thousand hours; null where visits are of fewer than three hour counts: a jump is no drift.</param>
public sealed record ReadingHistory(
    string Place, IReadOnlyList<(string Visit, SheetReading Reading)> Readings, double Change, double Uncertainty, double? Slope, double? SlopeUncertainty)
{
    public bool Changed => Math.Abs(Change) > Uncertainty;

    public bool Drifts => Slope is double slope && Math.Abs(slope) > SlopeUncertainty;
}

/// <summary>A truck's readings over the years, each with its change since the first visit and its drift over the hours it worked.</summary>
public static class TruckHistory
{
    private const int FewestHourCounts = 3;

    /// <param name="visits">In any order; at least two readings make a history.</param>
    public static IReadOnlyList<ReadingHistory> Of(IReadOnlyList<Visit> visits)
    {
        ArgumentNullException.ThrowIfNull(visits);
        Visit[] inOrder = [.. visits.OrderBy(visit => visit.Date)];
        return
        [
            .. inOrder.SelectMany(visit => visit.Readings.Keys).Distinct()
                .Select(place => Of(place, [.. inOrder.Where(visit => visit.Readings.ContainsKey(place))]))
                .OfType<ReadingHistory>(),
        ];
    }

    private static ReadingHistory? Of(string place, Visit[] visits)
    {
        if (visits.Length < 2)
        {
            return null;
        }

        SheetReading first = visits[0].Readings[place];
        SheetReading last = visits[^1].Readings[place];
        (double? slope, double? uncertainty) = Slope(place, [.. visits.Where(visit => visit.Hours is not null)]);
        return new ReadingHistory(
            place,
            [.. visits.Select(visit => (visit.Id, visit.Readings[place]))],
            last.Value - first.Value,
            Math.Sqrt((first.Uncertainty * first.Uncertainty) + (last.Uncertainty * last.Uncertainty)),
            slope,
            uncertainty);
    }

    // Least squares over the hour meter; the readings' own uncertainties say how sure the slope is.
    private static (double? Slope, double? Uncertainty) Slope(string place, Visit[] visits)
    {
        // Between two hour counts a repair is as good as a drift.
        if (visits.Select(visit => visit.Hours).Distinct().Count() < FewestHourCounts)
        {
            return (null, null);
        }

        double middle = visits.Average(visit => visit.Hours!.Value);
        double level = visits.Average(visit => visit.Readings[place].Value);
        double squares = visits.Sum(visit => Math.Pow(visit.Hours!.Value - middle, 2));
        if (squares < 1)
        {
            return (null, null);
        }

        double products = visits.Sum(visit => (visit.Hours!.Value - middle) * (visit.Readings[place].Value - level));
        double variance = visits.Sum(visit => Math.Pow((visit.Hours!.Value - middle) * visit.Readings[place].Uncertainty, 2));
        return (1000 * products / squares, 1000 * Math.Sqrt(variance) / squares);
    }
}
