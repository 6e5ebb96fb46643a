using System;

namespace LoggerBox.Host.Report;

/// <summary>Where a reading stands beside its limits, in shares of a small drawing's width; far outside, the tick stands at the edge.</summary>
/// <param name="Left">The band of the limits begins.</param>
/// <param name="Tick">The reading; with its uncertainty it reaches from <paramref name="Least"/> to <paramref name="Most"/>.</param>
public sealed record BandScale(double Left, double Right, double Least, double Tick, double Most)
{
    private const double Margin = 0.026;

    // The band stands at the same place in every row, so that the eye runs down the ticks alone.
    private const double BandLeft = 0.316;
    private const double BandRight = 0.684;

    /// <summary>Null where there is nothing to draw: no reading, or no limit.</summary>
    public static BandScale? Of(ReadingRow row) => row.Verdict is null ? null : Of(row.Value, row.Uncertainty ?? 0, row.Min, row.Max);

    /// <param name="half">Half of what the reading may be off by.</param>
    public static BandScale? Of(double? reading, double half, double? min, double? max)
    {
        if (reading is not double value || (min is null && max is null))
        {
            return null;
        }

        (double low, double high) = Bounds(min, max);
        double Place(double quantity) => Math.Clamp(BandLeft + ((quantity - low) / (high - low) * (BandRight - BandLeft)), Margin, 1 - Margin);
        return new BandScale(min is null ? 0 : BandLeft, max is null ? 1 : BandRight, Place(value - half), Place(value), Place(value + half));
    }

    /// <summary>What the band's ends stand for; an open side takes a quarter of the limit, or 1 where the limit is 0.</summary>
    private static (double Low, double High) Bounds(double? min, double? max)
    {
        double given = min ?? max ?? 0;
        double room = given == 0 ? 1 : Math.Abs(given) / 4;
        double low = min ?? given - room;
        double high = max ?? given + room;
        return high > low ? (low, high) : (low - room, high + room);
    }
}
