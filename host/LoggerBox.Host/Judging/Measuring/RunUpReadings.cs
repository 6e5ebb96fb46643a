using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>
/// Idle to 90 % of governed speed in neutral. The fastest burst counts, of the newest session that has one: a slow foot lengthens a run-up,
/// nothing but the engine shortens it.
/// </summary>
public static class RunUpReadings
{
    public static Measured? Seconds(IReadOnlyList<RecordedSession> sessions, double? governedRpm)
    {
        double reached = (governedRpm ?? 0) * 0.9;
        return sessions.Reverse().Select(session => Fastest(session, reached)).FirstOrDefault(fastest => fastest is not null);
    }

    private static Measured? Fastest(RecordedSession session, double reachedRpm)
    {
        var fastest = session.RunUps
            .Where(record => record.Gear is Gear.Neutral or Gear.Unknown)
            .Where(record => record.Milliseconds > 0 && record.ToTenths / 10.0 >= reachedRpm && record.FromTenths / 10.0 < 1100)
            .MinBy(record => record.Milliseconds);
        return fastest is null
            ? null
            : new Measured(fastest.Milliseconds / 1000.0, new UncertaintyBudget().AddRectangular(EngagementReadings.SampleSeconds(session)).AddRectangular(0.03));
    }
}
