using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture.Board;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Capture.Tests.Engine;

public class CaptureEngineTests
{
    [Fact]
    public void No_step_allocates_once_the_session_runs()
    {
        Random random = new(11);
        var rows = Session(random).ToArray();
        RowBoard board = new(rows);
        SessionHeader header = new() { SampleIntervalMicroseconds = 20000 };
        Array.ForEach(header.Pressures, pressure => (pressure.Kind, pressure.SpanCounts, pressure.SpanPascal) = (ChannelKind.RecordedPressure, 1, 100));
        RecordLog log = new(new MemoryStore(4 << 20));
        log.Open();
        CaptureEngine engine = new(board, log, new PlanRecord(), header);
        Play(board, engine, 0, 500);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Play(board, engine, 500, rows.Length);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        engine.End(SessionEndReason.Button, rows.Length * 20000L);
        Assert.True(log.Sessions.Last!.Ended);
    }

    [Fact]
    public void A_hole_in_tags_and_marks_does_not_part_a_hold()
    {
        List<Row> rows = Steady(20, 2000, Gear.Forward, Step.HoldForward);
        for (int i = 0; i < rows.Count; i += 17)
        {
            rows[i] = rows[i] with { Gear = Gear.Unknown, Mark = Step.None };
        }

        HoldRecord hold = Assert.Single(Replayed.Run(rows).Holds);
        Assert.Equal((Gear.Forward, Step.HoldForward, true), (hold.Gear, hold.Step, hold.Marked));
    }

    [Fact]
    public void A_gap_is_written_down_and_no_hold_reaches_across_it()
    {
        List<Row> rows = Steady(20, 700, Gear.Neutral, Step.None).Where(row => row.Seconds is < 8 or > 12).ToList();
        Replayed replayed = Replayed.Run(rows);
        DropoutRecord gap = Assert.Single(replayed.Dropouts);
        Assert.Equal(DropoutReason.SourceGap, gap.Reason);
        Assert.InRange(gap.FromMicroseconds / 1e6, 7.9, 8);
        Assert.InRange(gap.ToMicroseconds / 1e6, 12, 12.1);
        Assert.Equal(2, replayed.Holds.Count);
        Assert.All(replayed.Holds, hold => Assert.True(hold.DurationMilliseconds < 8100));
    }

    [Fact]
    public void Gear_and_stall_are_watched_where_every_set_comes_late()
    {
        Row[] rows = [.. Steady(2, 700, Gear.Neutral, Step.None), .. Steady(2, 700, Gear.Forward, Step.None), .. Steady(6, 1900, Gear.Forward, Step.None)];
        RowBoard board = new(rows);
        RecordLog log = new(new MemoryStore(4 << 20));
        log.Open();
        CaptureEngine engine = new(board, log, new PlanRecord { IdleMaxTenths = 7600 }, new SessionHeader { SampleIntervalMicroseconds = 20000 });
        for (int i = 0; i < rows.Length; i++)
        {
            board.At = i;
            engine.Step(i * 50000L);
        }

        Assert.Equal(Gear.Forward, engine.Live.Gear);
        Assert.InRange(engine.RunMilliseconds, 14_000, 15_500);
    }

    [Fact]
    public void Full_pedal_in_gear_with_an_empty_clutch_is_a_cut_drive()
    {
        List<Row> rows = [.. Steady(8, 700, Gear.Forward, Step.None), .. Steady(8, 2400, Gear.Forward, Step.None)];
        rows = rows.Select((row, i) => row with { Seconds = i * 0.02, ClutchKilopascal = i < 400 ? 380 : 2 }).ToList();
        Replayed replayed = Replayed.Run(rows);
        Assert.Contains(replayed.Events, e => e.Kind == EventKind.DriveCut && (Gear)e.Value == Gear.Forward);
    }

    [Fact]
    public void A_stall_held_too_long_is_told_to_stop_and_cooled_down()
    {
        List<Row> rows = [.. Steady(5, 700, Gear.Forward, Step.None), .. Steady(12, 1900, Gear.Forward, Step.None), .. Steady(80, 1100, Gear.Neutral, Step.None)];
        rows = rows.Select((row, i) => row with { Seconds = i * 0.02 }).ToList();
        PlanRecord plan = new() { IdleMaxTenths = 7600, StallForwardTenths = 19000, StallForwardToleranceTenths = 1000 };
        List<(Cue Cue, double Seconds)> cues = Replayed.Run(rows, plan).Events
            .Where(e => e.Kind == EventKind.Cue)
            .Select(e => ((Cue)e.Value, e.Microseconds / 1e6))
            .ToList();
        Assert.InRange(cues.Single(cue => cue.Cue == Cue.StallTarget).Seconds, 9.9, 10.4);
        Assert.InRange(cues.Single(cue => cue.Cue == Cue.StallWarn).Seconds, 12.9, 13.4);
        Assert.InRange(cues.Single(cue => cue.Cue == Cue.StallStop).Seconds, 14.9, 15.4);
        Assert.InRange(cues.Single(cue => cue.Cue == Cue.CoolDownOver).Seconds, 76.9, 77.5);
    }

    [Fact]
    public void Run_up_is_timed_from_leaving_idle_to_90_per_cent()
    {
        // A straight ramp of 2000 rpm a second from 700 to 2400: 5 % of the way at 0.0425 s, 2160 rpm at 0.73 s.
        List<Row> rows = Steady(20, 700, Gear.Neutral, Step.None)
            .Select(row => row with { Rpm = Math.Clamp(700 + (2000 * (row.Seconds - 8)), 700, 2400) })
            .ToList();
        RunUpRecord runUp = Assert.Single(Replayed.Run(rows).RunUps);
        Assert.InRange(runUp.Milliseconds, 660, 715);
        Assert.Equal(24000, runUp.ToTenths, 20.0);
    }

    private static List<Row> Steady(double seconds, double rpm, Gear gear, Step mark)
    {
        Random random = new(7);
        return Enumerable.Range(0, (int)(seconds * 50))
            .Select(i => new Row(i * 0.02, rpm + random.Next(-3, 4), 400 + random.Next(-1, 2), gear == Gear.Neutral ? 0 : 380, 150, gear, mark))
            .ToList();
    }

    private static IEnumerable<Row> Session(Random random)
    {
        foreach (var (rpm, gear) in new[] { (700, Gear.Neutral), (700, Gear.Forward), (2000, Gear.Forward), (700, Gear.Neutral), (2450, Gear.Neutral), (700, Gear.Reverse), (1900, Gear.Reverse), (0, Gear.Neutral) })
        {
            for (int i = 0; i < 400; i++)
            {
                double noise = random.NextDouble();
                yield return new Row(0, rpm == 0 ? 0 : rpm + (5 * noise), 400 + noise, gear == Gear.Neutral ? noise : Math.Min(380, i * 8), 150 + noise, gear);
            }
        }
    }

    private static void Play(RowBoard board, CaptureEngine engine, int from, int to)
    {
        for (int i = from; i < to; i++)
        {
            board.At = i;
            engine.Step(i * 20000L);
        }
    }

    private sealed class RowBoard(Row[] rows) : IBoard
    {
        public int At { get; set; }

        public void Read(SampleSet sample)
        {
            Row row = rows[At];
            sample.Values[Channel.Speed] = (int)(row.Rpm!.Value * 10);
            sample.Values[Channel.Main] = (int)(row.MainKilopascal!.Value * 10);
            sample.Values[Channel.Clutch] = (int)(row.ClutchKilopascal!.Value * 10);
            sample.Values[Channel.Converter] = (int)(row.ConverterKilopascal!.Value * 10);
        }

        public Gear ReadGear() => rows[At].Gear;

        public Step ReadStepMark() => Step.None;

        public int ReadOilTenthsCelsius() => SampleSet.Missing;

        public void Show(Cue cue)
        {
            // The session's events are what the tests read.
        }
    }
}
