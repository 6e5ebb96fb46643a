using System.Collections.Generic;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>How well one cause explains what was seen.</summary>
/// <param name="Points">Natural logarithm of how much likelier the readings are with this cause than in a sound truck.</param>
/// <param name="Row">The row of the matrix that fits best; -1 where the cause was found in another way.</param>
public sealed record CauseScore(Cause Cause, double Points, int Row, IReadOnlyList<string> For, IReadOnlyList<string> Against);
