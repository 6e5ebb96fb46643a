using System.Collections.Generic;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>How well one cause explains what was seen.</summary>
/// <param name="Fit">Natural logarithm of how much likelier the readings are with this cause than in a sound truck.</param>
/// <param name="Row">The row of the matrix that fits best; -1 where the cause was found in another way.</param>
public sealed record CauseScore(Cause Cause, double Fit, int Row, IReadOnlyList<string> For, IReadOnlyList<string> Against)
{
    /// <summary>Natural logarithm of how common the cause is beside its neighbours.</summary>
    public double Commonness { get; init; }

    public double Points => Fit + Commonness;
}
