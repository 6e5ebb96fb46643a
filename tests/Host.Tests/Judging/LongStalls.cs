using System;
using System.Collections;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>A stall is timed from the speed's arrival to its end, however little of it stood still.</summary>
public sealed class LongStalls
{
    private const long Begin = 600_000_000;

    [Fact]
    public void A_stall_that_sagged_for_long_is_void_and_accuses_nobody()
    {
        // 1,800 rpm at first and 5 less each second: only the last seconds are found as a hold.
        RecordedSession session = Sagging(seconds: 20, holds: [(16.5, 3, 1560)]);
        var judgement = Of(session);
        Assert.Equal(Verdict.Void, Judged.Check(judgement, "stall-F", "rpm").Verdict);
        Assert.Contains(judgement.Validity, note => note is { Code: "stall-too-long", Effect: ValidityEffect.Void, Step: Step.StallForward });
        Assert.Contains(judgement.Validity, note => note.Effect == ValidityEffect.Void && note.Text.StartsWith("Stall in F came to rest only 16.5 s after the speed was there, later than 10 s", StringComparison.Ordinal));
        ValidityNote held = Assert.Single(judgement.Validity, note => note is { Code: "stall-too-long", Effect: ValidityEffect.Note });
        Assert.Matches("^Stall in F was held for (19.9|20.0) s, longer than 10 s", held.Text);
        Assert.Contains(judgement.Validity, note => note is { Code: "incomplete", Step: Step.StallForward });
        Assert.True(judgement.Suspects.Count == 0, Judged.Told(judgement));
    }

    [Fact]
    public void The_part_before_the_limit_is_judged_and_the_tail_is_not()
    {
        var judgement = Of(Sagging(seconds: 18, holds: [(1.5, 3, 1796), (14, 3, 1560)]));
        Check check = Judged.Check(judgement, "stall-F", "rpm");
        Assert.Equal(Verdict.In, check.Verdict);
        Assert.Equal(1796, check.Value!.Value, 1);
        Assert.Single(judgement.Validity, note => note is { Code: "stall-too-long", Step: Step.StallForward });
        Assert.True(judgement.Suspects.Count == 0, Judged.Told(judgement));
    }

    // Half a pedal against the brake to warm the oil, after the tests: nobody stalls for half a minute, and the stall was read.
    [Fact]
    public void What_was_held_too_long_never_replaces_a_stall_that_was_not()
    {
        var judgement = Of(WithHalfAPedal(new TestSession()));
        Check check = Judged.Check(judgement, "stall-F", "rpm");
        Assert.Equal(Verdict.In, check.Verdict);
        Assert.Equal(1800, check.Value!.Value, 1);
        Assert.True(judgement.Suspects.Count == 0, Judged.Told(judgement));
    }

    // Nothing is driven: both stalls stand at governed speed. The oil that was warmed up in gear says nothing else.
    [Fact]
    public void Half_a_pedal_held_too_long_clears_no_broken_drive()
    {
        var judgement = Of(WithHalfAPedal(new TestSession().Set(Step.StallForward, rpm: 2440).Set(Step.StallReverse, rpm: 2445)));
        Assert.Contains("drive-input-broken", Judged.First(judgement));
    }

    [Theory]
    [InlineData(9, 0)]
    [InlineData(14, 1)]
    public void Without_samples_neighbouring_parts_of_a_try_make_one_stall(double seconds, int notes)
    {
        var judgement = Of(Sagging(seconds, [(0.5, (seconds / 2) - 2, 1800), ((seconds / 2) + 1, (seconds / 2) - 1, 1790)], withSamples: false));
        Assert.Equal(notes, judgement.Validity.Count(note => note.Code == "stall-too-long"));
        Assert.DoesNotContain(judgement.Validity, note => note is { Code: "cool-down-short", Step: Step.StallForward });
    }

    [Fact]
    public void A_stall_in_which_nothing_stood_still_is_told_where_the_logger_called_to_stop()
    {
        RecordedSession made = Sagging(seconds: 15, holds: []);
        var session = new RecordedSession
        {
            Header = made.Header,
            Holds = made.Holds,
            Engagements = made.Engagements,
            RunUps = made.RunUps,
            End = made.End,
            Events =
            [
                new EventRecord { Kind = EventKind.GearTag, Value = (int)Gear.Forward, Microseconds = Begin - 3_000_000 },
                new EventRecord { Kind = EventKind.Cue, Value = (int)Cue.StallStop, Microseconds = Begin + 10_000_000 },
            ],
        };
        var judgement = Of(session);
        ValidityNote note = Assert.Single(judgement.Validity, note => note.Code == "stall-too-long");
        Assert.Equal(Step.StallForward, note.Step);
        Assert.Contains("never came to rest", note.Text, StringComparison.Ordinal);
        Assert.Empty(judgement.Suspects);
    }

    [Fact]
    public void Of_a_long_recording_only_the_samples_of_the_stall_are_read_and_those_once()
    {
        RecordedSession made = Sagging(seconds: 18, holds: [(14, 3, 1560)]);
        RecordedSample[] others = [.. Enumerable.Range(0, 100_000).Select(i => new RecordedSample(Begin + 60_000_000 + (i * 20_000L), 7500, 0, 0, 0))];
        CountedReads samples = new([.. made.Samples, .. others]);
        Of(new RecordedSession { Header = made.Header, Holds = made.Holds, Engagements = made.Engagements, RunUps = made.RunUps, End = made.End, Samples = samples });
        Assert.InRange(samples.Reads, 18 * 20, 25 * 20);
    }

    private sealed class CountedReads(IReadOnlyList<RecordedSample> samples) : IReadOnlyList<RecordedSample>
    {
        public int Reads { get; private set; }

        public int Count => samples.Count;

        public RecordedSample this[int index]
        {
            get
            {
                Reads++;
                return samples[index];
            }
        }

        public IEnumerator<RecordedSample> GetEnumerator() => samples.Select(sample =>
        {
            Reads++;
            return sample;
        }).GetEnumerator();

        IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
    }

    private static Judgement Of(RecordedSession session) => Judge.Of([session], TestSheet.Truck(), new JobFacts(), PressureUnit.Psi);

    /// <summary>The forward stall as it is, and after it half a minute at 1,300 rpm in the same gear.</summary>
    private static RecordedSession WithHalfAPedal(TestSession test)
    {
        RecordedSession made = Sagging(seconds: 30, holds: [(1.5, 9, 1300), (12, 9, 1302)], withSamples: false, test);
        HoldRecord stall = test.Build().Holds.Single(hold => hold.Step == Step.StallForward);
        stall.StartMicroseconds = Begin - 50_000_000;
        return new RecordedSession
        {
            Header = made.Header,
            Holds = [.. made.Holds.Append(stall).OrderBy(hold => hold.StartMicroseconds)],
            Engagements = made.Engagements,
            RunUps = made.RunUps,
            End = made.End,
        };
    }

    private static RecordedSession Sagging(double seconds, (double At, double Seconds, double Rpm)[] holds, bool withSamples = true, TestSession? test = null)
    {
        RecordedSession made = (test ?? new TestSession()).Build();
        HoldRecord stall = made.Holds.Single(hold => hold.Step == Step.StallForward);
        List<HoldRecord> parts = [.. holds.Select(part =>
        {
            var hold = new HoldRecord();
            hold.CopyFrom(stall);
            hold.StartMicroseconds = Begin + (long)(part.At * 1e6);
            hold.DurationMilliseconds = (int)(part.Seconds * 1000);
            hold.ApproachMilliseconds = 500;
            hold.Readings[Channel.Speed].SettledHundredths = (int)(part.Rpm * 1000);
            return hold;
        })];
        var samples = new List<RecordedSample>();
        for (double time = -5; time < seconds + 5; time += 0.05)
        {
            double rpm = time < 0 || time > seconds ? 750 : 1800 - (5 * time);
            samples.Add(new RecordedSample(Begin + (long)(time * 1e6), (int)(10 * rpm), 0, 0, 0));
        }

        return new RecordedSession
        {
            Header = made.Header,
            Holds = [.. made.Holds.Where(hold => hold != stall), .. parts],
            Engagements = made.Engagements,
            RunUps = made.RunUps,
            End = made.End,
            Samples = withSamples ? samples : [],
        };
    }
}
