using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Capture.Tests.Holds;

/// <summary>Real engines, recorded by others; sources and licences in tests/recordings and NOTICE. Plain statistics of the windows beside each check.</summary>
public class RecordedEngineTests
{
    [Fact]
    public void A_governed_diesel_at_idle_is_one_hold_from_end_to_end()
    {
        // 31 s at about 10 rows a second, unevenly timed; plain mean of all rows 797.40 rpm, deviation 6.19, slope +0.09 rpm/s.
        Replayed idle = Replayed.Run(Replayed.SpeedColumn("diesel-idle/governed-idle.csv", "rpm"));
        HoldRecord hold = Assert.Single(idle.Holds);
        Assert.InRange(hold.Readings[Channel.Speed].SettledHundredths / 1000.0, 797.0, 797.8);
        Assert.InRange(hold.DurationMilliseconds, 30000, 31500);
        Assert.InRange(hold.Readings[Channel.Speed].Peak / 10.0, 808, 818.5);
    }

    [Fact]
    public void A_speed_that_drifts_is_no_hold()
    {
        // From 9 to 15.4 s the speed sinks from 1285 to 944 and climbs to 1130 rpm, -40 rpm/s in the mean.
        Replayed blips = Replayed.Run(Replayed.SpeedColumn("engine-blips/blips-then-stall.csv", "rpm"));
        IEnumerable<HoldRecord> drifting = blips.Holds.Where(hold => Overlap(hold, 9, 15.4) > 0);
        Assert.Empty(drifting);
    }

    private static double Overlap(HoldRecord hold, double from, double to)
    {
        double begin = hold.StartMicroseconds / 1e6;
        double end = begin + (hold.DurationMilliseconds / 1000.0);
        return System.Math.Min(end, to) - System.Math.Max(begin, from);
    }
}
