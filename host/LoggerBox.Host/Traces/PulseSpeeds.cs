using System;

namespace LoggerBox.Host.Traces;

/// <summary>
/// Engine speed at given moments from pickup edges: whole periods over the time they took (reciprocal counting), so that one plug lead,
/// with 60 ms between its edges at 2000 rpm, resolves as finely as a ring gear.
/// </summary>
public static class PulseSpeeds
{
    /// <summary>Periods are gathered over at least this long, to even out what one turn of the engine does.</summary>
    private const long WindowMicroseconds = 100_000;

    /// <summary>Without an edge for this long the engine stands: a cranked engine (100 rpm) gives one every 1.2 s on one plug lead.</summary>
    private const long StoppedMicroseconds = 1_500_000;

    /// <param name="moments">Microseconds, increasing.</param>
    /// <param name="edges">Microseconds, increasing.</param>
    /// <returns>Tenths of rpm.</returns>
    public static int[] At(long[] moments, long[] edges, double pulsesPerRevolution)
    {
        ArgumentNullException.ThrowIfNull(moments);
        ArgumentNullException.ThrowIfNull(edges);
        int[] speeds = new int[moments.Length];
        int last = -1;
        int first = 0;
        for (int row = 0; row < moments.Length; row++)
        {
            while (last + 1 < edges.Length && edges[last + 1] <= moments[row])
            {
                last++;
            }

            if (last < 1 || moments[row] - edges[last] > StoppedMicroseconds)
            {
                continue;
            }

            while (first + 1 < last && moments[row] - edges[first + 1] >= WindowMicroseconds)
            {
                first++;
            }

            speeds[row] = Tenths(moments[row], edges, first, last, pulsesPerRevolution);
        }

        return speeds;
    }

    private static int Tenths(long moment, long[] edges, int first, int last, double pulsesPerRevolution)
    {
        if (edges[last] - edges[last - 1] > StoppedMicroseconds)
        {
            return 0;
        }

        while (edges[first + 1] - edges[first] > StoppedMicroseconds)
        {
            first++;
        }

        double period = (double)(edges[last] - edges[first]) / (last - first);

        // An edge that is overdue bounds the speed from above: a stopping engine must not stand at its last speed.
        double longest = Math.Max(period, (moment - edges[last]) * 0.75);
        return (int)Math.Round(Math.Min(600e6 / (longest * pulsesPerRevolution), int.MaxValue));
    }
}
