using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>A step that is missing because the try went wrong says how, and what to do; the stall of the invented truck is 1800 rpm.</summary>
public sealed class MissedTries
{
    [Fact]
    public void A_stall_given_up_says_that_it_was_too_short()
    {
        var note = Note(Step.StallForward, second => second < 1.2 ? 1800 : 750);
        Assert.Contains("given up", note.Text, StringComparison.Ordinal);
        Assert.Contains("1800 rpm", note.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stall_whose_speed_kept_rising_asks_whether_the_truck_crept()
    {
        var note = Note(Step.StallForward, second => second < 6 ? 1760 + (25 * second) : 750);
        Assert.Contains("Chalk a tyre", note.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hold_with_an_unsteady_foot_says_between_which_speeds()
    {
        var note = Note(Step.HoldForward, second => second < 8 ? 2000 + (90 * Math.Sin(2 * Math.PI * 0.35 * second)) : 750);
        Assert.Contains("up and down between 191", note.Text, StringComparison.Ordinal);
        Assert.Contains("steady foot", note.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_warm_up_in_gear_says_why_it_is_no_stall()
    {
        var session = Tried(Step.StallForward, second => second < 40 ? 1300 : 750);
        var warm = new HoldRecord { Gear = Gear.Forward, ClutchPressed = true, StartMicroseconds = StartOf(session) + 2_000_000, DurationMilliseconds = 37_000, ApproachMilliseconds = 800, ApproachFromTenths = 7500 };
        warm.Readings[Channel.Speed].Present = true;
        warm.Readings[Channel.Speed].SettledHundredths = 1_300_000;
        var note = Missed(Judged(new RecordedSession { Header = session.Header, Holds = [.. session.Holds, warm], Events = session.Events, Samples = session.Samples, End = session.End }));
        Assert.Contains("1300 rpm", note.Text, StringComparison.Ordinal);
        Assert.Contains("1800 rpm expected", note.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_try_that_became_a_reading_in_the_end_says_nothing()
    {
        var session = Tried(Step.IdleReverse, second => second < 1.2 ? 1800 : 750);
        Assert.DoesNotContain(Judged(session).Validity, note => note.Code == MissedSteps.Code);
    }

    [Theory]
    [InlineData(false, 1)]
    [InlineData(true, 0)]
    public void A_zero_that_was_never_read_again_is_told(bool closed, int notes)
    {
        var session = new TestSession().Build();
        if (closed)
        {
            var zero = new HoldRecord();
            zero.CopyFrom(session.Holds[0]);
            zero.StartMicroseconds = session.Holds[^1].StartMicroseconds + 60_000_000;
            session = new RecordedSession { Header = session.Header, Holds = [.. session.Holds, zero], End = session.End };
        }

        Assert.Equal(notes, Judged(session).Validity.Count(note => note.Code == ClosingZero.Code));
    }

    [Fact]
    public void A_shift_above_idle_is_a_note_and_not_judged()
    {
        var session = new TestSession().Build();
        session.Engagements[0].SpeedTenths = 15_000;
        session.Engagements[0].TotalMilliseconds = 100;
        var judgement = Judged(session);
        var note = Assert.Single(judgement.Validity, one => one.Code == "engagement-above-idle");
        Assert.Contains("forward at 1500 rpm", note.Text, StringComparison.Ordinal);
        Assert.Equal(Verdict.NotMeasured, judgement.Checks.Single(check => check.Step == "engage-F").Verdict);
        Assert.Empty(judgement.Suspects);
    }

    private static ValidityNote Note(Step missing, Func<double, double> rpm)
    {
        var judgement = Judged(Tried(missing, rpm));
        Assert.Contains(judgement.Validity, note => note.Code == "incomplete" && note.Step == missing);
        var told = Missed(judgement);
        Assert.Equal(missing, told.Step);
        return told;
    }

    private static ValidityNote Missed(Judgement judgement) => Assert.Single(judgement.Validity, note => note.Code == MissedSteps.Code);

    private static Judgement Judged(RecordedSession session) => Judge.Of([session], TestSheet.Truck(), new JobFacts(), PressureUnit.Psi);

    private static long StartOf(RecordedSession session) => session.Samples[0].Microseconds;

    /// <summary>A whole session without one step, and after it a minute in F at the given speed.</summary>
    private static RecordedSession Tried(Step missing, Func<double, double> rpm)
    {
        var session = new TestSession().Without(missing).Build();
        long start = session.Holds[^1].StartMicroseconds + 60_000_000;
        IEnumerable<RecordedSample> samples = Enumerable.Range(0, 60 * 20)
            .Select(i => new RecordedSample(start + (i * 50_000), (int)(10 * rpm(i / 20.0)), 0, 0, 0));
        return new RecordedSession
        {
            Header = session.Header,
            Holds = session.Holds,
            Engagements = session.Engagements,
            RunUps = session.RunUps,
            Events = [new EventRecord { Kind = EventKind.GearTag, Value = (int)Gear.Forward, Microseconds = start }],
            Samples = [.. samples],
            End = session.End,
        };
    }
}
