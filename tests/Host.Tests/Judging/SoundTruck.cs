using System;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>A sound truck is never accused, however it was recorded.</summary>
public sealed class SoundTruck
{
    [Fact]
    public void Nobody_is_suspected_and_what_is_not_covered_is_still_said()
    {
        var judgement = Judged.Of(new TestSession());
        Assert.Empty(judgement.Suspects);
        Assert.All(judgement.Checks, check => Assert.Equal(Verdict.In, check.Verdict));
        Assert.Equal(
            ["stator-seized", "brake-dragging", "axle-fault", "lubrication-starved", "clutch-dragging", "wrong-fluid"],
            judgement.NotCovered.Select(item => item.Code));
        Assert.DoesNotContain(judgement.Validity, note => note.Code == "incomplete");
    }

    [Theory]
    [InlineData(Channel.Speed)]
    [InlineData(Channel.Main)]
    [InlineData(Channel.Clutch)]
    [InlineData(Channel.Converter)]
    public void Without_one_channel_nobody_is_suspected_and_it_is_called_incomplete(int channel)
    {
        var judgement = Judged.Of(new TestSession().Without(channel));
        Assert.Empty(judgement.Suspects);
        Assert.Contains(judgement.Validity, note => note.Code == "incomplete");
        Assert.Contains(judgement.Checks, check => check.Verdict == Verdict.NotMeasured);
    }

    [Fact]
    public void Without_knowing_the_gears_nobody_is_suspected()
    {
        var judgement = Judged.Of(new TestSession { GearsKnown = false, EngageForward = null, EngageReverse = null });
        Assert.Empty(judgement.Suspects);
        Assert.Contains(judgement.Checks, check => check is { Step: "hold", Verdict: Verdict.In });
        Assert.Contains(judgement.Checks, check => check is { Step: "stall", Verdict: Verdict.In });
    }

    // Several hundred sound trucks, each reading off by what a good sensor and an unsteady foot do.
    [Fact]
    public void With_scattered_readings_nobody_is_suspected()
    {
        const int seed = 20261;
        var random = new Random(seed);
        for (int i = 0; i < 300; i++)
        {
            var session = new TestSession { EngageForward = 0.7 + (0.7 * random.NextDouble()) };
            session.EngageReverse = session.EngageForward * (0.9 + (0.2 * random.NextDouble()));
            foreach (var step in Enum.GetValues<Step>().Where(step => step is >= Step.IdleNeutral and <= Step.HoldReverse))
            {
                session.Scale(Channel.Speed, 1 + (0.006 * ((2 * random.NextDouble()) - 1)), step);
                session.Scale(Channel.Main, 1 + (0.015 * ((2 * random.NextDouble()) - 1)), step);
                session.Scale(Channel.Clutch, 1 + (0.015 * ((2 * random.NextDouble()) - 1)), step);
                session.Scale(Channel.Converter, 1 + (0.03 * ((2 * random.NextDouble()) - 1)), step);
            }

            var judgement = Judged.Of(session);
            Assert.True(judgement.Suspects.Count == 0, $"seed {seed}, truck {i}:\n{Judged.Told(judgement)}");
        }
    }

    [Fact]
    public void With_an_empty_sheet_readings_are_shown_and_nothing_is_judged()
    {
        var judgement = Judged.Of(new TestSession(), new DataSheet { FileName = "empty.toml" });
        Assert.Empty(judgement.Checks);
        Assert.Empty(judgement.Suspects);
        Assert.Equal(11, judgement.Holds.Count);
    }
}
