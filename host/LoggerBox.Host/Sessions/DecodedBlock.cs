using System;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Sessions;

/// <summary>What a sample block holds.</summary>
/// <param name="IntervalMicroseconds">Between its sets; 0 where they come unevenly.</param>
/// <param name="Samples">Empty where only their times are wanted.</param>
internal readonly record struct DecodedBlock(long FirstMicroseconds, long LastMicroseconds, long LatestMicroseconds, uint IntervalMicroseconds, int Count, RecordedSample[] Samples)
{
    public static DecodedBlock Of(SampleBlock block, SampleSet sample, bool keepsSamples)
    {
        RecordedSample[] samples = keepsSamples ? new RecordedSample[block.Count] : [];
        long latest = long.MinValue;
        for (int i = 0; i < block.Count; i++)
        {
            block.CopyTo(i, sample);
            latest = Math.Max(latest, sample.Microseconds);
            if (keepsSamples)
            {
                int[] values = sample.Values;
                samples[i] = new RecordedSample(sample.Microseconds, values[Channel.Speed], values[Channel.Main], values[Channel.Clutch], values[Channel.Converter]);
            }
        }

        return new DecodedBlock(block.FirstMicroseconds, sample.Microseconds, latest, block.IntervalMicroseconds, block.Count, samples);
    }
}
