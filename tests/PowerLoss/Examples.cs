using System;
using LoggerBox.Protocol.Records;

namespace LoggerBox.PowerLoss;

/// <summary>Recordings for faults to be put into.</summary>
public static class Examples
{
    /// <summary>Samples over the whole range, which no encoding makes small: the longest blocks that there are.</summary>
    public static SampleBlock Block(Random random, long microseconds, int sets, int from = 0, int to = 32_000)
    {
        SampleBlock block = new();
        block.Begin(20_000);
        SampleSet sample = new() { Microseconds = microseconds };
        for (int i = 0; i < sets; i++)
        {
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                sample.Values[channel] = random.Next(from, to);
            }

            block.TryAdd(sample);
            sample.Microseconds += 20_000;
        }

        return block;
    }

    /// <summary>
    /// Every kind of page on one card of 16 KiB: an older log that the host has, with a session that was cut; over it a new one with
    /// long and short blocks, notes, and a session that found the card full.
    /// </summary>
    public static Recording EveryKindOfPage(int seed)
    {
        Random random = new(seed);
        Recording recording = new(new Card(32));
        recording.Start(1);
        Session(recording, random, blocks: 3, end: true);
        Session(recording, random, blocks: 2, end: false);
        recording.Start(2);
        Session(recording, random, blocks: 1, end: true);
        Must(recording.Confirm(2));
        Must(recording.Confirm(1));
        Must(recording.Confirm(3));
        Session(recording, random, blocks: 2, end: true);
        Must(recording.Confirm(4));
        Session(recording, random, blocks: 1, end: false);
        recording.Start(3);
        Session(recording, random, blocks: 20, end: true);
        Must(recording.Confirm(5));
        return recording;
    }

    /// <summary>One session of an hour at 50 sets a second, as quiet as a real one.</summary>
    public static Recording OneHour(int seed)
    {
        const int Blocks = 3600 * 50 / SampleBlock.Capacity;
        Random random = new(seed);
        Recording recording = new(new Card(3000));
        recording.Start(1);
        Must(recording.Begin("an hour"));
        for (int i = 0; i < Blocks; i++)
        {
            Must(recording.Append(new EventRecord { Microseconds = i, Kind = EventKind.Button, Value = i }));
            Must(recording.Append(Block(random, i * 2_560_000L, SampleBlock.Capacity, from: 2000, to: 2008)));
        }

        Must(recording.End(Blocks * 2_560_000L));
        return recording;
    }

    private static void Session(Recording recording, Random random, int blocks, bool end)
    {
        Must(recording.Begin("plan"));
        recording.Append(new PlanRecord { Name = "plan" });
        for (int i = 0; i < blocks && !recording.IsFull; i++)
        {
            // A block whose first page ends inside its first record, now and then.
            if (i % 3 != 2)
            {
                recording.Append(new EventRecord { Microseconds = i, Kind = EventKind.Button, Value = i });
                recording.Append(new HoldRecord { StartMicroseconds = i });
            }

            int sets = i % 2 == 0 ? SampleBlock.Capacity : 20;
            recording.Append(Block(random, i * 2_560_000L, sets));
        }

        // A card that is full still takes the end.
        Must(!end || recording.End(blocks * 2_560_000L));
    }

    private static void Must(bool done)
    {
        if (!done)
        {
            throw new InvalidOperationException("The log refused what it has room for.");
        }
    }
}
