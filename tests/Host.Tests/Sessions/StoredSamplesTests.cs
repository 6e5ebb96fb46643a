using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading.Tasks;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Host.Tests.Sessions;

/// <summary>Sample sets that are read from the bytes when somebody looks, held against those that were written.</summary>
public sealed class StoredSamplesTests
{
    [Theory]
    [InlineData(20_000)]
    [InlineData(0)]
    public void By_number_in_turn_and_between_two_moments_they_are_those_that_were_written(uint interval)
    {
        (byte[] bytes, List<RecordedSample> written) = Recording(interval, blocks: 40, seed: 1);
        foreach (RecordedSession session in new[] { SessionDecoder.Decode(bytes).Session, SessionDecoder.Reopen(bytes).Session })
        {
            Assert.IsType<StoredSamples>(session.Samples);
            Assert.Equal(written, session.Samples);
            Assert.Equal(written, Enumerable.Range(0, session.Samples.Count).Select(i => session.Samples[i]));
            Random random = new(2);
            for (int i = 0; i < 200; i++)
            {
                int at = random.Next(written.Count);
                Assert.Equal(written[at], session.Samples[at]);
                long from = written[at].Microseconds - random.Next(3);
                long to = from + random.Next(3_000_000);
                RecordedSample[] between = [.. written.Where(sample => sample.Microseconds >= from && sample.Microseconds <= to)];
                Assert.Equal(between, session.SamplesBetween(from, to));
                Assert.Equal(between, Visited(session, from, to));
            }
        }
    }

    [Fact]
    public void The_first_at_or_after_a_moment_is_found_in_blocks_and_in_holes_between_them()
    {
        (byte[] bytes, List<RecordedSample> written) = Recording(0, blocks: 30, seed: 8);
        RecordedSession stored = SessionDecoder.Reopen(bytes).Session;
        RecordedSession held = new() { Header = stored.Header, Samples = written };
        Random random = new(9);
        foreach (long moment in written.SelectMany(sample => new[] { sample.Microseconds - 1, sample.Microseconds, sample.Microseconds + 1 }).Concat([0, long.MaxValue]).OrderBy(_ => random.Next()))
        {
            int expected = written.FindIndex(sample => sample.Microseconds >= moment) is var found and >= 0 ? found : written.Count;
            Assert.Equal(expected, stored.IndexAt(moment));
            Assert.Equal(expected, held.IndexAt(moment));
        }
    }

    [Fact]
    public void A_block_without_any_set_stands_in_nobodys_way()
    {
        SampleBlock first = Block(20_000, 5_000_000, new Random(10));
        SampleBlock empty = new();
        empty.Begin(20_000);
        SampleBlock last = Block(20_000, 50_000_000, new Random(11));
        RecordedSession session = SessionDecoder.Decode(new RecordedBytes(7).Add(RecordedBytes.Header(7)).Add(first).Add(empty).Add(empty).Add(last).ToArray()).Session;
        List<RecordedSample> written = [.. Samples(first), .. Samples(last)];
        Assert.Equal(written, session.Samples);
        Assert.Equal(written, session.SamplesBetween(0, long.MaxValue));
        Assert.Equal(written, Visited(session, 0, long.MaxValue));
        for (int i = 0; i < written.Count; i++)
        {
            Assert.Equal(written[i], session.Samples[i]);
            Assert.Equal(i, session.IndexAt(written[i].Microseconds));
            Assert.Equal([written[i]], session.SamplesBetween(written[i].Microseconds, written[i].Microseconds));
        }
    }

    private static List<RecordedSample> Visited(RecordedSession session, long from, long to)
    {
        List<RecordedSample> visited = [];
        session.VisitSamples(from, to, samples => visited.AddRange(samples));
        return visited;
    }

    [Fact]
    public void Several_may_read_at_once()
    {
        (byte[] bytes, List<RecordedSample> written) = Recording(20_000, blocks: 100, seed: 3);
        IReadOnlyList<RecordedSample> samples = SessionDecoder.Reopen(bytes).Session.Samples;
        Parallel.For(0, 50_000, i => Assert.Equal(written[i * 7919 % written.Count], samples[i * 7919 % written.Count]));
    }

    [Fact]
    public void Blocks_that_lie_out_of_order_come_in_order_of_time()
    {
        RecordedBytes session = new RecordedBytes(7).Add(RecordedBytes.Header(7));
        SampleBlock later = Block(20_000, 90_000_000, new Random(4));
        SampleBlock earlier = Block(20_000, 50_000_000, new Random(5));
        byte[] bytes = session.Add(later).Add(earlier).ToArray();
        List<RecordedSample> expected = [.. Samples(earlier), .. Samples(later)];
        Assert.Equal(expected, SessionDecoder.Decode(bytes).Session.Samples);
        Assert.Equal(expected, SessionDecoder.Reopen(bytes).Session.Samples);
    }

    [Fact]
    public void A_block_that_cannot_be_read_any_more_gives_missing_readings_at_its_times()
    {
        (byte[] bytes, List<RecordedSample> written) = Recording(20_000, blocks: 3, seed: 6);
        IReadOnlyList<RecordedSample> samples = SessionDecoder.Decode(bytes).Session.Samples;
        RecordScan scan = new(bytes, 0, bytes.Length);
        while (scan.MoveNext())
        {
            Array.Fill(bytes, (byte)0xFF, scan.Envelope.BodyOffset, scan.Envelope.BodyLength);
        }

        Assert.Equal(written.Select(sample => sample.Microseconds), samples.Select(sample => sample.Microseconds));
        Assert.All(samples, sample => Assert.Equal(SampleSet.Missing, sample.MainCounts));
    }

    private static (byte[] Bytes, List<RecordedSample> Written) Recording(uint interval, int blocks, int seed)
    {
        Random random = new(seed);
        RecordedBytes session = new RecordedBytes(7).Add(RecordedBytes.Header(7));
        List<RecordedSample> written = [];
        for (int i = 0; i < blocks; i++)
        {
            SampleBlock block = Block(interval, 5_000_000 + (i * 10_000_000L), random);
            session.Add(block);
            written.AddRange(Samples(block));
        }

        return (session.ToArray(), written);
    }

    private static SampleBlock Block(uint interval, long start, Random random)
    {
        SampleBlock block = new();
        block.Begin(interval);
        SampleSet sample = new() { Microseconds = start };
        int sets = random.Next(1, SampleBlock.Capacity + 1);
        for (int i = 0; i < sets; i++)
        {
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                sample.Values[channel] = random.Next(20) == 0 ? SampleSet.Missing : random.Next(5000);
            }

            Assert.True(block.TryAdd(sample));
            sample.Microseconds += interval == 0 ? random.Next(1, 50_000) : interval;
        }

        return block;
    }

    private static IEnumerable<RecordedSample> Samples(SampleBlock block)
    {
        SampleSet set = new();
        for (int i = 0; i < block.Count; i++)
        {
            block.CopyTo(i, set);
            yield return new RecordedSample(set.Microseconds, set.Values[Channel.Speed], set.Values[Channel.Main], set.Values[Channel.Clutch], set.Values[Channel.Converter]);
        }
    }
}
