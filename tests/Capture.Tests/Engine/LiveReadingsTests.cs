using System;
using LoggerBox.Capture.Board;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Capture.Tests.Engine;

/// <summary>What a host that watches would be told while the engine runs.</summary>
public sealed class LiveReadingsTests
{
    private const int Interval = 20_000;

    private readonly SteadyBoard board = new();
    private readonly CaptureEngine engine;
    private long now;

    public LiveReadingsTests()
    {
        SessionHeader header = new() { SampleIntervalMicroseconds = Interval };
        Array.ForEach(header.Pressures, pressure => (pressure.Kind, pressure.SpanCounts, pressure.SpanPascal) = (ChannelKind.RecordedPressure, 1, 100));
        RecordLog log = new(new MemoryStore(1 << 20));
        log.Open();
        engine = new CaptureEngine(board, log, new PlanRecord { StallTargetMilliseconds = 3000, StallWarnMilliseconds = 5000, StallStopMilliseconds = 8000, CooldownMilliseconds = 15_000 }, header);
    }

    private LiveReadings Live => engine.Live;

    [Fact]
    public void Before_the_first_sample_nothing_is_claimed() =>
        Assert.Equal((false, SampleSet.Missing, LiveReadings.NoLimit, Cue.None), (Live.Sampling, Live.Speed, Live.StallMillisecondsLeft, Live.Cue));

    [Fact]
    public void Readings_are_those_of_the_last_set_and_a_hold_is_named_while_it_lasts()
    {
        Run(seconds: 5, rpm: 700, Gear.Neutral);
        Assert.Equal((true, 7000, 4000, 0, 1500, Gear.Neutral), (Live.Sampling, Live.Speed, Live.Main, Live.Clutch, Live.Converter, Live.Gear));
        Assert.Equal(now - Interval, Live.Microseconds);
        Assert.Equal((Step.IdleNeutral, Cue.Captured), (Live.Step, Live.Cue));
    }

    [Fact]
    public void A_step_that_the_operator_names_stands()
    {
        board.Mark = Step.HoldForward;
        Run(seconds: 3, rpm: 700, Gear.Forward);
        Assert.Equal(Step.HoldForward, Live.Step);
    }

    [Fact]
    public void The_stall_counts_down_and_so_does_the_pause_after_it()
    {
        Run(seconds: 3, rpm: 700, Gear.Forward);
        Assert.Equal((LiveReadings.NoLimit, 0), (Live.StallMillisecondsLeft, Live.CooldownMillisecondsLeft));

        Run(seconds: 4, rpm: 1900, Gear.Forward);
        Assert.InRange(Live.StallMillisecondsLeft, 4000, 4500);
        Run(seconds: 6, rpm: 1900, Gear.Forward);
        Assert.Equal((0, Cue.StallStop), (Live.StallMillisecondsLeft, Live.Cue));

        Run(seconds: 5, rpm: 700, Gear.Neutral);
        Assert.Equal(LiveReadings.NoLimit, Live.StallMillisecondsLeft);
        Assert.InRange(Live.CooldownMillisecondsLeft, 10_000, 10_500);
    }

    [Fact]
    public void After_the_session_the_last_set_is_no_longer_called_live()
    {
        Run(seconds: 3, rpm: 700, Gear.Neutral);
        engine.End(SessionEndReason.Button, now);
        Assert.Equal((false, 7000), (Live.Sampling, Live.Speed));
    }

    private void Run(int seconds, int rpm, Gear gear)
    {
        (board.SpeedTenths, board.Gear) = (rpm * 10, gear);
        for (long end = now + (seconds * 1_000_000L); now < end; now += Interval)
        {
            engine.Step(now);
        }
    }

    private sealed class SteadyBoard : IBoard
    {
        public int SpeedTenths { get; set; }

        public Gear Gear { get; set; }

        public Step Mark { get; set; }

        public void Read(SampleSet sample)
        {
            sample.Values[Channel.Speed] = SpeedTenths;
            sample.Values[Channel.Main] = 4000;
            sample.Values[Channel.Clutch] = Gear == Gear.Neutral ? 0 : 3800;
            sample.Values[Channel.Converter] = 1500;
        }

        public Gear ReadGear() => Gear;

        public Step ReadStepMark() => Mark;

        public int ReadOilTenthsCelsius() => SampleSet.Missing;

        public void Show(Cue cue)
        {
            // The live readings carry it too.
        }
    }
}
