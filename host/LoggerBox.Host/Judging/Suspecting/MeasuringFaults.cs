using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>Faults of the measuring itself, found before any cause in the truck is thought of.</summary>
public static class MeasuringFaults
{
    public static IReadOnlyList<CauseScore> Of(Evidence evidence, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return new[] { GearTags.Contradicted(evidence), SwappedLines.Find(evidence, unit), PickupRatio.Find(evidence) }
            .OfType<CauseScore>()
            .ToList();
    }
}
