using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture.Link;
using LoggerBox.Capture.Storage;
using LoggerBox.Capture.Tests.Storage;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Capture.Tests.Link;

public sealed class LiveStreamTests
{
    private const long Millisecond = 1000;
    private const long Second = 1_000_000;

    private readonly RecordLog log = LogExamples.Opened(new MemoryStore(400_000));
    private readonly Cable cable = new();
    private readonly LinkAnswers answers;
    private long now = 5 * Second;

    public LiveStreamTests()
    {
        answers = new LinkAnswers(log, cable, loggerId: 0xBEEF, bootCount: 4);
    }

    [Fact]
    public void A_watch_is_answered_at_once_and_then_at_each_interval_until_its_time_is_over()
    {
        cable.Send(new Watch { IntervalMilliseconds = 250, ForSeconds = 2 });
        Assert.Equal([0, 250, 500, 750, 1000, 1250, 1500, 1750], TimesOfReadings(10 * Second));
    }

    [Fact]
    public void A_host_that_asks_again_gets_readings_for_as_long_as_it_asks()
    {
        cable.Send(new Watch { IntervalMilliseconds = 500, ForSeconds = 2 });
        int first = TimesOfReadings(Second).Count;
        cable.Send(new Watch { IntervalMilliseconds = 500, ForSeconds = 2 });
        Assert.Equal((2, 4), (first, TimesOfReadings(10 * Second).Count));
    }

    [Theory]
    [InlineData(1, 255, 300)]
    [InlineData(99, 30, 300)]
    [InlineData(1000, 255, 30)]
    public void No_host_gets_more_than_ten_readings_a_second_or_half_a_minute_of_them(int interval, int seconds, int expected)
    {
        cable.Send(new Watch { IntervalMilliseconds = (ushort)interval, ForSeconds = (byte)seconds });
        Assert.Equal(expected, TimesOfReadings(60 * Second).Count);
    }

    [Fact]
    public void An_interval_of_nothing_ends_it_and_so_does_a_greeting()
    {
        foreach (IMessage last in (IMessage[])[new Watch(), new Hello { Version = LinkVersion.Current }])
        {
            cable.Send(new Watch { IntervalMilliseconds = 100, ForSeconds = 30 });
            TimesOfReadings(Second);
            cable.Send(last);
            Assert.InRange(TimesOfReadings(5 * Second).Count, 0, last is Watch ? 1 : 0);
        }
    }

    [Fact]
    public void A_download_keeps_most_of_the_line()
    {
        LogExamples.Record(log, events: 4000);
        cable.Send(new Watch { IntervalMilliseconds = 1, ForSeconds = 30 });
        cable.Send(new Fetch { SessionNumber = 1, Length = uint.MaxValue, PayloadLength = 512, EndWanted = true });

        // 48 ms are one such frame on a line of 115,200 baud.
        List<IMessage> received = [];
        while (!received.OfType<FetchEnd>().Any())
        {
            now += 48 * Millisecond;
            answers.Step(now, 0);
            received.AddRange(cable.Receive());
        }

        Assert.Equal((int)log.Sessions[0].Length, received.OfType<Data>().Sum(data => data.Length));
        Assert.NotEmpty(received.OfType<LiveReadings>());
        Assert.True(received.OfType<LiveReadings>().Count() * 2 <= received.OfType<Data>().Count() + 1);
    }

    [Fact]
    public void What_is_told_is_what_the_capture_engine_holds()
    {
        answers.Live = new LiveReadings { Sampling = true, Speed = 7105, Main = 4100, StallMillisecondsLeft = 2500, Gear = Gear.Forward };
        cable.Send(new Watch());
        answers.Step(now, 0);
        LiveReadings told = Assert.IsType<LiveReadings>(Assert.Single(cable.Receive()));
        Assert.Equal((true, 7105, 4100, 2500, Gear.Forward), (told.Sampling, told.Speed, told.Main, told.StallMillisecondsLeft, told.Gear));
        Assert.Equal(SampleSet.Missing, told.Clutch);
    }

    [Fact]
    public void Readings_and_ranges_allocate_nothing()
    {
        LogExamples.Record(log, events: 2000);
        DeafPort port = new();
        LinkAnswers quiet = new(log, port, 1, 1);
        port.Hear(new Watch { IntervalMilliseconds = 100, ForSeconds = 30 });
        port.Hear(new Fetch { SessionNumber = 1, Length = uint.MaxValue, PayloadLength = 64 });
        for (int i = 0; i < 20; i++)
        {
            quiet.Step(now += 50 * Millisecond, 0);
        }

        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 200; i++)
        {
            quiet.Step(now += 50 * Millisecond, 0);
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(port.Written > 10_000);
    }

    private List<long> TimesOfReadings(long microseconds)
    {
        List<long> times = [];
        long start = now;
        for (; now < start + microseconds; now += 10 * Millisecond)
        {
            answers.Step(now, 0);
            times.AddRange(cable.Receive().OfType<LiveReadings>().Select(_ => (now - start) / Millisecond));
        }

        return times;
    }

    /// <summary>Counts what is written and keeps none of it.</summary>
    private sealed class DeafPort : ISerialPort
    {
        private readonly Cable requests = new();

        public int Written { get; private set; }

        public void Hear(IMessage request) => requests.Send(request);

        public int Read(byte[] buffer, int offset, int count) => requests.ToLogger.Count == 0 ? 0 : requests.Read(buffer, offset, count);

        public int Write(byte[] buffer, int offset, int count)
        {
            Written += count;
            return count;
        }
    }
}
