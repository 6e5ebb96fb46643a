using System;

namespace LoggerBox.Host.Report;

/// <summary>Where a reading stands beside its limits, in shares of a small drawing's width; far outside, the tick stands at the edge.</summary>
/// <param name="Left">The band of the limits begins.</param>
/// <param name="Tick">The reading; with its uncertainty it reaches from <paramref name="Least"/> to <paramref name="Most"/>.</param>
internal sealed record BandScale(double Left, double Right, double Least, double Tick, double Most)
{
    private const double Margin = 0.026;

    // The band stands at the same place in every row, so that the eye runs down the ticks alone.
    private const double BandLeft = 0.316;
    private const double BandRight = 0.684;

    /// <summary>Null where there is nothing to draw: no reading, or no limit.</summary>
    public static BandScale? Of(ReadingRow row)
    {
        if (row.Value is not double value || row.Verdict is null || (row.Min is null && row.Max is null))
        {
            return null;
        }

        (double low, double high) = Bounds(row);
        double Place(double quantity) => Math.Clamp(BandLeft + ((quantity - low) / (high - low) * (BandRight - BandLeft)), Margin, 1 - Margin);
        double half = row.Uncertainty ?? 0;
        return new BandScale(row.Min is null ? 0 : BandLeft, row.Max is null ? 1 : BandRight, Place(value - half), Place(value), Place(value + half));
    }

    /// <summary>What the band's ends stand for; an open side takes a quarter of the limit, or 1 where the limit is 0.</summary>
    private static (double Low, double High) Bounds(ReadingRow row)
    {
        double given = row.Min ?? row.Max ?? 0;
        double room = given == 0 ? 1 : Math.Abs(given) / 4;
        double low = row.Min ?? given - room;
        double high = row.Max ?? given + room;
        return high > low ? (low, high) : (low - room, high + room);
    }
}
