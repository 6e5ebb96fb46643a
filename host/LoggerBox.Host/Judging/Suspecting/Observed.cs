using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>One cell of the cause matrix as this truck shows it.</summary>
/// <param name="Levels">Belief in each <see cref="Level"/>; they add up to 1.</param>
/// <param name="Telling">Beyond doubt off: only such ones may raise a suspicion at all.</param>
/// <param name="Text">The reading in words, with its limit.</param>
/// <param name="Weight">1, or less where several cells see the same thing.</param>
public sealed record Observed(Observation Observation, IReadOnlyList<double> Levels, bool Telling, string Text, double Weight = 1)
{
    public Level Strongest
    {
        get
        {
            int best = (int)Level.Normal;
            for (int i = 0; i < Levels.Count; i++)
            {
                best = Levels[i] > Levels[best] ? i : best;
            }

            return (Level)best;
        }
    }

    /// <summary>Telling, and there is a cause that would show like this: an oddity that no cause makes accuses nobody.</summary>
    public bool Accuses =>
        Telling && Enumerable.Range(0, CauseMatrix.RowCount).Any(row => CauseMatrix.Points(row, Observation, Strongest) > 0);

    /// <summary>Weighted points that this observation gives a row of the matrix.</summary>
    public double Points(int row)
    {
        double sum = 0;
        for (int i = 0; i < Levels.Count; i++)
        {
            sum += Levels[i] * CauseMatrix.Points(row, Observation, (Level)i);
        }

        return Weight * sum / 100;
    }
}
