using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Host.Report;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>Engine runs of one truck together: the newest good reading of a step counts, and nothing is subtracted from another run's reading.</summary>
public sealed class SeveralSessions
{
    [Fact]
    public void A_drop_is_of_one_engine_run()
    {
        RecordedSession whole = new TestSession().Build();
        RecordedSession later = new TestSession().Set(Step.Governed, rpm: 1300).Without(Step.Relief).Build();
        Assert.Equal(160, Judged.Check(Of(whole, later), "governed", "rpm-drop").Value!.Value, 1.0);

        RecordedSession withoutGoverned = new TestSession().Without(Step.Governed).Build();
        Assert.Equal(Verdict.NotMeasured, Judged.Check(Of(withoutGoverned, later), "governed", "rpm-drop").Verdict);
    }

    /// <summary>A load pulls an engine down, never up: a fact of the trade.</summary>
    [Fact]
    public void A_relief_above_the_full_pedal_is_no_drop()
    {
        Judgement judgement = Of(new TestSession().Set(Step.Governed, rpm: 2290).Set(Step.Relief, rpm: 2450).Build());
        Assert.Equal(Verdict.NotMeasured, Judged.Check(judgement, "governed", "rpm-drop").Verdict);
        Assert.DoesNotContain(judgement.Suspects, suspect => suspect.Code == "work-relief-low");
    }

    [Fact]
    public void An_engagement_that_was_slow_in_an_earlier_run_is_healed_by_a_later_one()
    {
        RecordedSession slow = new TestSession { EngageForward = 4.5 }.Build();
        Assert.Equal(Verdict.High, Judged.Check(Of(slow), "engage-F", "engagement-time").Verdict);
        Assert.Equal(Verdict.In, Judged.Check(Of(slow, new TestSession().Build()), "engage-F", "engagement-time").Verdict);
        Assert.Equal(Verdict.High, Judged.Check(Of(new TestSession().Build(), slow), "engage-F", "engagement-time").Verdict);
    }

    /// <summary>Clutch pressure low in forward in one run, in reverse in another: in neither is one side lower than the other.</summary>
    [Fact]
    public void The_two_clutches_are_compared_within_one_run()
    {
        RecordedSession low = new TestSession().Scale(Channel.Clutch, 0.7, Step.IdleForward, Step.IdleReverse, Step.HoldForward, Step.HoldReverse).Build();
        RecordedSession forward = new TestSession().Without(Step.IdleReverse).Without(Step.HoldReverse).Without(Step.StallReverse).Build();
        Judgement both = Of(low, forward);
        Assert.DoesNotContain(both.Suspects.SelectMany(suspect => suspect.For), reason => reason.Contains("158.0 psi", System.StringComparison.Ordinal) && reason.Contains("110", System.StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_told_of_one_of_several_recordings_says_of_which()
    {
        Judgement both = Of(new TestSession { ZeroMain = 3 }.Build(), new TestSession().Build());
        Assert.Contains(both.Validity, note => note.Text.StartsWith("Recording 1 of 2: Main pressure read 3.0 psi", System.StringComparison.Ordinal));
        Assert.DoesNotContain(Of(new TestSession().Build()).Validity, note => note.Text.StartsWith("Recording", System.StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_but_the_engine_off_makes_no_suspect()
    {
        TestSession bench = new() { ZeroMain = 20 };
        foreach (Step step in WithEngine())
        {
            bench.Without(step);
        }

        Assert.Empty(Of(bench.Build()).Suspects);
        Assert.Contains(Of(new TestSession { ZeroMain = 20 }.Build()).Suspects, suspect => suspect.Code == "pressure-zero-shift");
    }

    [Fact]
    public void A_suspect_of_a_part_of_a_test_says_what_is_missing()
    {
        TestSession part = new TestSession().Scale(Channel.Clutch, 0.5, Step.IdleForward, Step.HoldForward).Without(Step.StallForward).Without(Step.StallReverse).Without(Step.Relief).Without(Step.HoldReverse);
        Assert.EndsWith(" (test not complete: hold in part, no relief, no stall)", Outcome.Headline(Of(part.Build())), System.StringComparison.Ordinal);
    }

    [Fact]
    public void The_drop_stands_under_the_relief_and_a_stopped_engine_has_no_speed()
    {
        ReadingRow[] rows = [.. ReadingTable.Of(Of(new TestSession().Build()))];
        Assert.Equal("relief", rows.Single(row => row.Quantity == "rpm-drop").Step);
        Assert.DoesNotContain(rows, row => row.Step == "zero" && row.Quantity == "rpm");
    }

    [Fact]
    public void Where_line_pressure_is_low_nobody_is_sent_into_another_stall()
    {
        TestSession close = new TestSession().Set(Step.StallForward, rpm: 1690.8).Set(Step.StallReverse, rpm: 1690.8);
        Assert.Contains(Of(close.Build()).Validity, note => note.Code == CloseNotes.Code && note.Text.EndsWith("the last good try counts.", System.StringComparison.Ordinal));

        // 37 psi are the least that the sheet asks for.
        Judgement low = Of(close.Set(Step.IdleForward, main: 30, clutch: 29).Build());
        Assert.Contains(low.Validity, note => note.Code == GuardNotes.NoStall && note.Text.Contains("main pressure 30.0 psi", System.StringComparison.Ordinal));
        Assert.DoesNotContain(low.Validity, note => note.Step == Step.StallForward && note.Text.Contains("Repeat it once", System.StringComparison.Ordinal));
        Assert.Contains(ReportWords.Outcome(low).Lines, line => line.StartsWith("Do NOT stall again", System.StringComparison.Ordinal));
    }

    [Fact]
    public void What_the_logger_warned_of_stands_on_the_first_page()
    {
        RecordedSession session = new TestSession().Build();
        RecordedSession warned = Warned(session, Cue.PressureTooLowToStall, 130_000_000);
        string[] lines = [.. ReportWords.Outcome(Of(warned)).Lines];
        Assert.Contains(lines, line => line.StartsWith("Do NOT stall again: the logger warned", System.StringComparison.Ordinal));
        Assert.Contains("The logger warned: line pressure too low to stall (at 130 s, and 2 stalls after it).", lines);
        Assert.DoesNotContain(ReportWords.Outcome(Of(session)).Lines, line => line.Contains("stall again", System.StringComparison.Ordinal));
    }

    /// <summary>Drive wheels in the air turn the pedal's work into nothing but speed: the logger's stall clock runs, and nobody stalled.</summary>
    [Theory]
    [InlineData(Step.HoldForward, Cue.StallStop, false)]
    [InlineData(Step.HoldReverse, Cue.Overspeed, false)]
    [InlineData(Step.StallForward, Cue.StallStop, true)]
    [InlineData(Step.StallForward, Cue.Overspeed, true)]
    public void A_stall_that_was_too_long_or_too_fast_is_told_where_it_was_one(Step step, Cue cue, bool isTold)
    {
        RecordedSession session = new TestSession().Build();
        HoldRecord hold = session.Holds.Last(record => record.Step == step);
        RecordedSession warned = Warned(session, cue, hold.StartMicroseconds + (hold.DurationMilliseconds * 500L));
        Assert.Equal(isTold, Of(warned).Validity.Any(note => note.Code == GuardNotes.Warned));
    }

    private static RecordedSession Warned(RecordedSession session, Cue cue, long microseconds) => new()
    {
        Header = session.Header,
        Holds = session.Holds,
        Engagements = session.Engagements,
        RunUps = session.RunUps,
        Events = [new EventRecord { Kind = EventKind.Cue, Value = (int)cue, Microseconds = microseconds }],
        End = session.End,
    };

    private static Step[] WithEngine() =>
    [
        Step.IdleNeutral, Step.IdleForward, Step.IdleReverse, Step.HoldNeutral, Step.HoldForward, Step.HoldReverse, Step.Governed, Step.Relief,
        Step.StallForward, Step.StallReverse,
    ];

    private static Judgement Of(params RecordedSession[] sessions) => Judge.Of(sessions, TestSheet.Truck(), new JobFacts(), PressureUnit.Psi);
}
