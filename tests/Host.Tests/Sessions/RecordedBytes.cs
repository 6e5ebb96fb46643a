using System;
using System.Collections.Generic;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Tests.Sessions;

/// <summary>Sessions as a logger would store them, made with the protocol's own writer.</summary>
internal sealed class RecordedBytes
{
    public const uint LoggerId = 0xB0A7;
    public const ushort BootCount = 3;

    private readonly RecordWriter writer = new();
    private readonly List<byte> bytes = [];
    private readonly uint number;
    private uint sequence;

    public RecordedBytes(uint number) => this.number = number;

    /// <summary>Where each record begins.</summary>
    public List<int> Starts { get; } = [];

    public byte[] ToArray() => bytes.ToArray();

    public RecordedBytes Add(IRecord record)
    {
        int length = writer.Write(record, number, BootCount, sequence++);
        if (length == 0)
        {
            throw new InvalidOperationException("The record is longer than a record may be.");
        }

        Starts.Add(bytes.Count);
        bytes.AddRange(writer.Bytes.AsSpan(0, length));
        return this;
    }

    /// <summary>Header, plan, samples at 50 a second from a seeded source, one hold, one event, end.</summary>
    public static RecordedBytes Session(uint number, int seed, int sampleSets = 300)
    {
        RecordedBytes session = new(number);
        session.Add(Header(number));
        session.Add(new PlanRecord { Name = "sample plan" });
        session.Add(new EventRecord { Microseconds = 1_000_000, Kind = EventKind.GearTag, Value = (int)Gear.Neutral });
        WriteSamples(record => session.Add(record), new Random(seed), sampleSets);
        session.Add(new HoldRecord { StartMicroseconds = 2_000_000, DurationMilliseconds = 4000, Gear = Gear.Neutral, Step = Step.IdleNeutral });
        session.Add(new SessionEnd
        {
            Microseconds = 1_000_000 + (20_000L * sampleSets),
            Reason = SessionEndReason.Button,
            SampleSets = (uint)sampleSets,
            StepsCaptured = 1u << (int)Step.IdleNeutral,
        });
        return session;
    }

    public static SessionHeader Header(uint number) => new()
    {
        LoggerId = LoggerId,
        BootCount = BootCount,
        SessionNumber = number,
        StartMicroseconds = 1_000_000,
        StartUtcSeconds = 1_790_000_000,
        SampleIntervalMicroseconds = 20_000,
        PlanName = "sample plan",
    };

    /// <summary>
    /// Sample blocks at 50 a second; the record is filled again after each call. Pressures are noise over the whole range: no encoding makes
    /// the sessions much shorter, and what is tested with them counts in bytes.
    /// </summary>
    public static void WriteSamples(Action<IRecord> write, Random random, int sampleSets)
    {
        SampleBlock block = new();
        block.Begin(20_000);
        SampleSet sample = new();
        for (int i = 0; i < sampleSets; i++)
        {
            sample.Microseconds = 1_000_000 + (20_000L * i);
            sample.Values[Channel.Speed] = 7000;
            sample.Values[Channel.Main] = random.Next(-short.MaxValue, short.MaxValue);
            sample.Values[Channel.Clutch] = SampleSet.Missing;
            sample.Values[Channel.Converter] = random.Next(-short.MaxValue, short.MaxValue);
            block.TryAdd(sample);
            if (block.IsFull || i == sampleSets - 1)
            {
                write(block);
                block.Begin(20_000);
            }
        }
    }
}
