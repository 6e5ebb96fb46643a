using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>
/// Idle to 90 % of governed speed in neutral. The fastest burst counts: a slow foot lengthens a run-up, nothing but the engine shortens it.
/// </summary>
public static class RunUpReadings
{
    public static Measured? Seconds(IReadOnlyList<RecordedSession> sessions, double? governedRpm)
    {
        double reached = (governedRpm ?? 0) * 0.9;
        var fastest = sessions
            .SelectMany(session => session.RunUps.Select(record => (session, record)))
            .Where(pair => pair.record.Gear is Gear.Neutral or Gear.Unknown)
            .Where(pair => pair.record.Milliseconds > 0 && pair.record.ToTenths / 10.0 >= reached && pair.record.FromTenths / 10.0 < 1100)
            .OrderBy(pair => pair.record.Milliseconds)
            .FirstOrDefault();
        if (fastest.record is null)
        {
            return null;
        }

        double interval = EngagementReadings.SampleSeconds(fastest.session);
        return new Measured(fastest.record.Milliseconds / 1000.0, new UncertaintyBudget().AddRectangular(interval).AddRectangular(0.03));
    }
}
