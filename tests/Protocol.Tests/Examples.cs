using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Tests;

/// <summary>One of each record and message, every field filled from its own seed.</summary>
public static class Examples
{
    public static IEnumerable<IRecord> Records()
    {
        IRecord[] filled =
        [
            new SessionHeader(), new PlanRecord(), new EventRecord(), new HoldRecord(), new EngagementRecord(), new RunUpRecord(),
            new DropoutRecord(), new SessionEnd(), new SessionConfirmation(),
        ];
        foreach (IRecord record in filled)
        {
            Fields.Fill(record, new Random(1000 + (int)record.Code));
            if (record is HoldRecord hold)
            {
                hold.Drifting = 0;
            }

            yield return record;
        }

        HoldRecord drifting = new();
        Fields.Fill(drifting, new Random(1100));
        drifting.Drifting = 0b0101;
        yield return drifting;

        yield return Block(20000, 5);
        yield return Block(0, 5);
        yield return NoiseBlock(20000, 5);
    }

    public static IEnumerable<IMessage> Messages()
    {
        IMessage[] filled =
        [
            new Hello(), new HelloAnswer(), new List(), new Fetch(), new FetchEnd(), new Confirm(), new Confirmed(), new PlanAnswer(),
            new SetClock(), new ClockAnswer(), new Watch(), new LiveReadings(), new SendCalibration(), new GetCalibration(), new CalibrationAnswer(), new Refusal(),
        ];
        foreach (IMessage message in filled)
        {
            Fields.Fill(message, new Random(2000 + (int)message.Code));
            yield return message;
        }

        PlanRecord plan = new();
        Fields.Fill(plan, new Random(2100));
        yield return new SendPlan(plan);

        Data data = new() { Tag = 7, Offset = 4096, Length = 32 };
        new Random(2200).NextBytes(data.Payload.AsSpan(0, 32));
        yield return data;

        SessionList sessions = new() { Total = 9, FirstIndex = 6, Count = 3 };
        foreach (SessionEntry entry in sessions.Entries.AsSpan(0, 3))
        {
            Fields.Fill(entry, new Random(2300));
        }

        yield return sessions;
    }

    /// <summary>Sets of invented readings, one of them with a channel missing; interval 0 for uneven times.</summary>
    public static SampleBlock Block(uint intervalMicroseconds, int sets)
    {
        SampleBlock block = new();
        block.Begin(intervalMicroseconds);
        SampleSet sample = new();
        for (int i = 0; i < sets; i++)
        {
            sample.Microseconds = 1_000_000 + (intervalMicroseconds == 0 ? 21_000 * i + i * i : intervalMicroseconds * i);
            sample.Values[Channel.Speed] = 7120 + i;
            sample.Values[Channel.Main] = 9000 - 7 * i;
            sample.Values[Channel.Clutch] = i == 3 ? SampleSet.Missing : -12 + i;
            sample.Values[Channel.Converter] = 4000 + 300 * i;
            if (!block.TryAdd(sample))
            {
                throw new InvalidOperationException("The block refused a set that continues it.");
            }
        }

        return block;
    }

    /// <summary>Sets that no code makes shorter; they are stored plain.</summary>
    public static SampleBlock NoiseBlock(uint intervalMicroseconds, int sets, long first = 1_000_001)
    {
        Random random = new(2400);
        SampleBlock block = new();
        block.Begin(intervalMicroseconds);
        SampleSet sample = new();
        for (int i = 0; i < sets; i++)
        {
            sample.Microseconds = first + (intervalMicroseconds == 0 ? 21_000 : intervalMicroseconds) * (long)i;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                sample.Values[channel] = random.Next(short.MinValue + 1, short.MaxValue) + (channel == Channel.Speed ? SampleBlock.SpeedMiddleTenths : 0);
            }

            if (!block.TryAdd(sample))
            {
                throw new InvalidOperationException("The block refused a set that continues it.");
            }
        }

        return block;
    }

    public static string Name(IRecord record) => record switch
    {
        HoldRecord { Drifting: not 0 } => "HoldRecord-drifting",
        SampleBlock { IntervalMicroseconds: 0 } => "SampleBlock-uneven",
        SampleBlock { FirstMicroseconds: 1_000_001 } => "SampleBlock-plain",
        _ => record.GetType().Name,
    };

    public static string Text(IRecord record)
    {
        string text = Fields.List(record);
        if (record is SampleBlock block)
        {
            SampleSet sample = new();
            for (int i = 0; i < block.Count; i++)
            {
                block.CopyTo(i, sample);
                text += $"set {i} = {sample.Microseconds} us: {string.Join(", ", sample.Values)}\n";
            }
        }

        return text;
    }

    public static string Text(IMessage message) => message switch
    {
        SendPlan sendPlan => Fields.List(sendPlan.Plan),
        Data data => $"Tag = {data.Tag}\nOffset = {data.Offset}\nPayload = {Convert.ToHexString(data.Payload, 0, data.Length)}\n",
        SessionList sessions => $"Total = {sessions.Total}\nFirstIndex = {sessions.FirstIndex}\nCount = {sessions.Count}\n"
            + string.Concat(sessions.Entries[..sessions.Count].Select(Fields.List)),
        _ => Fields.List(message),
    };

    public static byte[] Bytes(IRecord record, uint sequence = 3)
    {
        RecordWriter writer = new();
        int length = writer.Write(record, sessionNumber: 7, bootCount: 2, sequence);
        return writer.Bytes[..length];
    }

    public static IRecord Empty(RecordCode code) => code switch
    {
        RecordCode.SessionHeader => new SessionHeader(),
        RecordCode.Plan => new PlanRecord(),
        RecordCode.SampleBlock => new SampleBlock(),
        RecordCode.Event => new EventRecord(),
        RecordCode.Hold => new HoldRecord(),
        RecordCode.Engagement => new EngagementRecord(),
        RecordCode.RunUp => new RunUpRecord(),
        RecordCode.Dropout => new DropoutRecord(),
        RecordCode.SessionEnd => new SessionEnd(),
        RecordCode.SessionConfirmation => new SessionConfirmation(),
        _ => throw new NotSupportedException("No record class for code " + (int)code),
    };
}
