using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture.Speed;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Capture.Tests.Holds;

/// <summary>
/// One spark in two revolutions, polled every 10 ms: 20 edges a second at full speed, each known to a sixth of a period. The work hydraulics held over
/// relief for three seconds pull the engine down by a hundred rpm and more (common practice: a drop of 50 to 300).
/// </summary>
public class PlugLeadHoldTests
{
    private const int Seed = 41;

    [Fact]
    public void A_relief_of_three_seconds_is_found_whatever_speeds_keep_step_with_the_polls()
    {
        Random random = new(Seed);
        for (int run = 0; run < 60; run++)
        {
            double governed = 2400 + (100 * random.NextDouble());
            double relief = governed - 100 - (60 * random.NextDouble());
            List<HoldRecord> holds = Replayed.Run(Rows(governed, relief, random.NextDouble())).Holds;
            string found = $"run {run}, {governed:F1} and {relief:F1} rpm: {string.Join(", ", holds.Select(hold => hold.Readings[Channel.Speed].SettledHundredths / 1000.0))}";
            Assert.True(holds.Exists(hold => Near(hold, governed)), found);
            Assert.True(holds.Exists(hold => Near(hold, relief)), found);
        }
    }

    private static bool Near(HoldRecord hold, double rpm) => Math.Abs((hold.Readings[Channel.Speed].SettledHundredths / 1000.0) - rpm) < rpm / 100;

    private static List<Row> Rows(double governed, double relief, double phase)
    {
        PulseSpeed speed = new(1, 2);
        List<Row> rows = [];
        for (int poll = 1; poll <= 1700; poll++)
        {
            double seconds = poll / 100.0;
            double rpm = seconds < 6 ? governed
                : seconds < 10 ? governed + ((relief - governed) * Math.Min(1, (seconds - 6) / 0.9))
                : relief + ((governed - relief) * Math.Min(1, (seconds - 10) / 0.9));
            phase += rpm / 120 / 100;
            speed.Poll((long)phase, poll * 10000L);
            if (poll % 2 == 0)
            {
                int tenths = speed.ReadTenths(poll * 10000L);
                rows.Add(new Row(seconds, tenths == SampleSet.Missing ? null : tenths / 10.0, Gear: Gear.Neutral));
            }
        }

        return rows;
    }
}
