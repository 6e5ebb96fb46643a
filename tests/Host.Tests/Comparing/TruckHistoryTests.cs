using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Comparing;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Judging.FromJobs;
using LoggerBox.Host.Tests.Judging;
using LoggerBox.Host.Units;
using Xunit;

namespace LoggerBox.Host.Tests.Comparing;

public sealed class TruckHistoryTests
{
    private const string Place = "difference.clutch_forward_reverse";

    /// <summary>Of two hour counts any jump is a straight line.</summary>
    [Theory]
    [InlineData(false, 4211, 4211, 4300)]
    [InlineData(true, 4000, 5000, 6000)]
    public void A_jump_between_two_hour_counts_is_no_drift(bool drifts, params int[] hours)
    {
        double[] values = [36, 36, 1];
        Visit[] visits = [.. hours.Select((hour, i) => new Visit($"J{i + 1}", DateTimeOffset.UnixEpoch.AddDays(i), hour, new Dictionary<string, SheetReading> { [Place] = new(values[i], 0.5) }))];
        ReadingHistory history = Assert.Single(TruckHistory.Of(visits));
        Assert.True(history.Changed);
        Assert.Equal(drifts, history.Drifts);
    }

    [Fact]
    public void A_difference_is_as_uncertain_in_the_history_as_in_the_report()
    {
        DataSheet limited = TestSheet.Truck(clutchDifference: new Limit(null, 8, null, 1));
        var session = new TestSession().Build();
        double reported = Judge.Of([session], limited, new JobFacts(), PressureUnit.Kilopascal).Checks.Single(check => check.Quantity == "difference-clutch").Uncertainty!.Value;
        Assert.Equal(reported, SheetReadings.Of(Judge.EvidenceOf([session], limited, new JobFacts()))[Place].Uncertainty, 3);
    }
}
