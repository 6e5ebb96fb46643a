using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Capture.Samples;
using LoggerBox.Capture.Storage;
using LoggerBox.Capture.Tests.Storage;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Capture.Tests.Samples;

public sealed class SampleRecorderTests
{
    private const uint Interval = 20_000;

    private readonly RecordLog log = LogExamples.Opened(new MemoryStore(600_000));
    private readonly SampleRecorder recorder;
    private readonly SampleSet sample = new();
    private readonly Random random = new(21);

    public SampleRecorderTests()
    {
        Assert.True(log.BeginSession(LogExamples.Header()));
        recorder = new SampleRecorder(log, Interval);
    }

    [Fact]
    public void No_set_waits_for_more_than_127_others_until_it_is_in_the_log()
    {
        for (int sets = 1; sets <= 1000; sets++)
        {
            AddFrom(sets - 1, 1);
            recorder.Advance();
            int stored = Recorded().OfType<SampleBlock>().Sum(block => block.Count);
            Assert.InRange(sets - stored, 0, SampleRecorder.MostLost);
        }
    }

    [Fact]
    public void Closing_writes_every_set_that_came()
    {
        AddFrom(0, 300);
        recorder.Close();
        Assert.Equal(Enumerable.Range(0, 300).Select(i => (long)i * Interval), Times(Recorded()));
        Assert.Equal(300u, recorder.SampleSets);
    }

    [Fact]
    public void A_dropout_stands_between_the_sets_before_and_after_it_wherever_it_comes()
    {
        long tick = 0;
        List<long> expected = [];
        for (int n = 0; n < 200; n++)
        {
            int sets = random.Next(1, 200);
            expected.AddRange(Enumerable.Range(0, sets).Select(i => (tick + i) * Interval));
            AddFrom(tick, sets);
            tick += sets + random.Next(1, 5);
        }

        recorder.Close();
        List<IRecord> records = Recorded();
        Assert.Equal(expected, Times(records));
        Assert.Equal(199, records.OfType<DropoutRecord>().Count());
        AssertOrder(records);
    }

    private static void AssertOrder(List<IRecord> records)
    {
        long last = -1;
        foreach (IRecord record in records)
        {
            switch (record)
            {
                case SampleBlock block:
                    Assert.True(block.FirstMicroseconds > last);
                    last = Times([block]).Last();
                    break;
                case DropoutRecord dropout:
                    Assert.Equal(last, dropout.FromMicroseconds);
                    last = dropout.ToMicroseconds - 1;
                    break;
            }
        }
    }

    private static IEnumerable<long> Times(IEnumerable<IRecord> records)
    {
        SampleSet set = new();
        foreach (SampleBlock block in records.OfType<SampleBlock>())
        {
            for (int i = 0; i < block.Count; i++)
            {
                block.CopyTo(i, set);
                yield return set.Microseconds;
            }
        }
    }

    private void AddFrom(long tick, int sets)
    {
        for (int i = 0; i < sets; i++)
        {
            sample.Microseconds = (tick + i) * Interval;
            sample.Values[Channel.Speed] = 7000 + random.Next(40);
            sample.Values[Channel.Main] = 9000 + random.Next(20);
            sample.Values[Channel.Clutch] = 300 + random.Next(20);
            sample.Values[Channel.Converter] = 4000 + random.Next(20);
            recorder.Add(sample);
        }
    }

    private List<IRecord> Recorded() => LogExamples.Records(log, log.Sessions[0]);
}
