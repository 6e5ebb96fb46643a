using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Looking;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>Normal work looked through for what is unlike the rest: like is held against like.</summary>
public sealed class DaysWork
{
    [Fact]
    public void A_shift_above_idle_is_held_against_its_like_only()
    {
        var seen = Look([.. Engagements(8, 1000), .. Engagements(2, 500, rpm: 1500)]);
        Assert.DoesNotContain(seen, one => one.IsOdd);
        Assert.Equal(2, seen.Count(one => one is { AboveIdle: true, Oddness: null }));
    }

    [Fact]
    public void One_slow_shift_is_odd_and_too_few_are_not_compared()
    {
        Assert.Equal(2.8, Assert.Single(Look([.. Engagements(8, 1000), .. Engagements(1, 2800)]), one => one.IsOdd).Value);
        Assert.All(Look([.. Engagements(3, 1000), .. Engagements(1, 2800)]), one => Assert.Null(one.Oddness));
    }

    // Ten rows a second tell a moment to a tenth of a second, at the start and at the end.
    [Theory]
    [InlineData(100_000, false)]
    [InlineData(10_000, true)]
    public void What_the_rows_cannot_tell_apart_is_not_odd(uint interval, bool odd)
    {
        var seen = Look([.. Engagements(8, 900), .. Engagements(1, 1080)], interval);
        Assert.Equal(odd, seen.Any(one => one.IsOdd));
    }

    [Theory]
    [InlineData(5_000, 800, 1)]
    [InlineData(14_000, 800, 0)]
    [InlineData(5_000, 6_000, 0)]
    [InlineData(5_000, 0, 0)]
    public void Driving_steadily_is_no_stall(int milliseconds, int approachMilliseconds, int stalls)
    {
        var hold = new HoldRecord
        {
            Gear = Gear.Forward,
            ClutchPressed = true,
            Marked = true,
            Step = Step.StallForward,
            StartMicroseconds = 10_000_000,
            DurationMilliseconds = milliseconds,
            ApproachMilliseconds = approachMilliseconds,
            ApproachFromTenths = 7000,
        };
        hold.Readings[Channel.Speed].Present = true;
        hold.Readings[Channel.Speed].SettledHundredths = 1_750_000;
        var session = new RecordedSession { Header = new SessionHeader { SampleIntervalMicroseconds = 10_000 }, Holds = [hold] };
        Assert.Equal(stalls, LookList.Of([session], new PlanRecord()).Count(one => one.Kind == "stall"));
    }

    private static IEnumerable<EngagementRecord> Engagements(int count, int milliseconds, int rpm = 740) => Enumerable.Range(0, count)
        .Select(i => new EngagementRecord { Gear = Gear.Forward, TotalMilliseconds = milliseconds + (i % 3), SpeedTenths = rpm * 10, StartMicroseconds = i * 10_000_000L });

    private static IReadOnlyList<Seen> Look(EngagementRecord[] engagements, uint interval = 10_000) =>
        LookList.Of([new RecordedSession { Header = new SessionHeader { SampleIntervalMicroseconds = interval }, Engagements = engagements }], new PlanRecord());
}
