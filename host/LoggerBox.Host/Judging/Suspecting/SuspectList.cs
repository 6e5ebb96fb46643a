using System.Collections.Generic;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Judging.Suspecting;

public static class SuspectList
{
    public static IReadOnlyList<Suspect> Of(Evidence evidence, IReadOnlyList<Check> checks, PressureUnit unit) => [];
}
