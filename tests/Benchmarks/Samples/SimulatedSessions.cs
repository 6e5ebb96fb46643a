using System;
using System.Collections.Generic;
using LoggerBox.Protocol.Records;
using LoggerBox.TruckSimulator.Faults;
using LoggerBox.TruckSimulator.Runs;

namespace LoggerBox.Benchmarks.Samples;

/// <summary>Whole jobs of the simulated truck, as stored columns.</summary>
internal static class SimulatedSessions
{
    public static short[] Columns(string cause, int seed)
    {
        if (!SimulatedCauses.TryGet(cause, out SimulatedCause? known))
        {
            throw new ArgumentException($"The simulator knows no cause {cause}.", nameof(cause));
        }

        SimulatedRun run = new(known!, seed);
        List<short> columns = [];
        SampleSet sample = new();
        run.RunToEnd(now =>
        {
            sample.Microseconds = now;
            run.Board.Read(sample);
            for (int c = 0; c < Channel.Count; c++)
            {
                int middle = c == Channel.Speed && sample.Values[c] != SampleSet.Missing ? SampleBlock.SpeedMiddleTenths : 0;
                columns.Add((short)(sample.Values[c] - middle));
            }
        });
        return [.. columns];
    }
}
