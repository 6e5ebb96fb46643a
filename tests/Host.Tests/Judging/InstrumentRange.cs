using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>What a transducer's range says of its readings, and what a current loop says instead of one (bands: NAMUR NE 43, secondary sources).</summary>
public sealed class InstrumentRange
{
    private const int Open = 2;
    private const int Shorted = 3;
    private const int Saturated = 4;
    private const int Measuring = 1;

    // 0.25 % of 500 psi, anywhere within (GUM 4.3.7), k = 2: 2 * 1.25 / sqrt(3) = 1.44 psi, the hold's own scatter left out.
    [Theory]
    [InlineData(500, 1.44)]
    [InlineData(200, 0.58)]
    public void Without_a_stated_accuracy_a_known_range_decides(double rangePsi, double expanded)
    {
        RecordedSession session = new TestSession { Scatter = 0 }.Build();
        foreach (ChannelCalibration calibration in session.Header.Pressures)
        {
            // 12,800 counts from 4 to 20 mA; the readings stay what they are in pascal only for the shape of the test.
            calibration.Kind = ChannelKind.CurrentLoop;
            calibration.SpanPascal = (int)(rangePsi * PressureUnit.Psi.InPascal());
            calibration.SpanCounts = calibration.SpanPascal / 100;
        }

        Judgement judgement = Of(session);
        Assert.Equal(expanded, Judged.Check(judgement, "hold-F", "main").Uncertainty!.Value, 2);
    }

    [Fact]
    public void A_transducer_at_the_end_of_its_range_makes_its_readings_void()
    {
        var judgement = Of(With(new TestSession().Build(), (Step.HoldForward, Channel.Main, Saturated)));
        Assert.Equal(Verdict.Void, Judged.Check(judgement, "hold-F", "main").Verdict);
        Assert.Null(Judged.Check(judgement, "hold-F", "main").Value);
        Assert.Equal(Verdict.In, Judged.Check(judgement, "hold-F", "clutch").Verdict);
        Assert.Equal(Verdict.In, Judged.Check(judgement, "hold-R", "main").Verdict);
        ValidityNote note = Assert.Single(judgement.Validity, note => note.Code == "loop-out-of-range");
        Assert.Equal((ValidityEffect.Void, Step.HoldForward), (note.Effect, note.Step));
        Assert.StartsWith("Main pressure was at the end of its transducer's range at the hold in F", note.Text, StringComparison.Ordinal);
        Assert.Contains(judgement.Validity, note => note is { Code: "incomplete", Step: Step.HoldForward });
        Assert.Empty(judgement.Suspects);
    }

    [Theory]
    [InlineData(Open, "loop-open", "a wire is broken")]
    [InlineData(Shorted, "loop-shorted", "the cable is shorted")]
    public void A_loop_that_failed_is_told_once_with_time_step_and_what_to_do(int state, string code, string reason)
    {
        var judgement = Of(With(new TestSession().Build(), (Step.HoldForward, Channel.Clutch, state), (Step.HoldReverse, Channel.Clutch, state)));
        ValidityNote note = Assert.Single(judgement.Validity, note => note.Code == code);
        Assert.StartsWith("Clutch pressure: ", note.Text, StringComparison.Ordinal);
        Assert.Contains("from 359 s on, at the hold in F, the hold in R", note.Text, StringComparison.Ordinal);
        Assert.Contains(reason, note.Text, StringComparison.Ordinal);
    }

    private static Judgement Of(RecordedSession session) => Judge.Of([session], TestSheet.Truck(), new JobFacts(), PressureUnit.Psi);

    // The loop's state changes a second before the hold and comes back a second after it.
    private static RecordedSession With(RecordedSession made, params (Step Step, int Channel, int State)[] faults)
    {
        var events = new List<EventRecord>();
        foreach (var (step, channel, state) in faults)
        {
            HoldRecord hold = made.Holds.Single(hold => hold.Step == step);
            hold.Readings[channel].Present = state == Saturated;
            events.Add(new EventRecord { Kind = EventKind.LoopState, Microseconds = hold.StartMicroseconds - 1_000_000, Value = EventRecord.Pair(channel, state) });
            events.Add(new EventRecord { Kind = EventKind.LoopState, Microseconds = hold.StartMicroseconds + (hold.DurationMilliseconds * 1000L) + 1_000_000, Value = EventRecord.Pair(channel, Measuring) });
        }

        return new RecordedSession { Header = made.Header, Holds = made.Holds, Engagements = made.Engagements, RunUps = made.RunUps, End = made.End, Events = events };
    }
}
