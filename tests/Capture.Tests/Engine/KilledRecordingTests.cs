using System;
using System.Collections.Generic;
using LoggerBox.Capture.Samples;
using LoggerBox.Capture.Storage;
using LoggerBox.Capture.Tests.Storage;
using LoggerBox.Protocol.Records;
using LoggerBox.TruckSimulator.Faults;
using LoggerBox.TruckSimulator.Runs;
using Xunit;

namespace LoggerBox.Capture.Tests.Engine;

/// <summary>A whole simulated job, recorded by the engine; the program is killed after any of its steps.</summary>
public sealed class KilledRecordingTests
{
    private const int Seed = 7;

    // Opening a card of some hundred kilobytes at every step would take minutes.
    private const int StepsBetweenRestarts = 97;

    private readonly MemoryStore card = new(4_000_000);
    private readonly List<(int Steps, byte[] Card)> kills = [];
    private int steps;
    private uint mostLost;

    [Fact]
    public void A_kill_after_any_step_costs_no_more_sets_than_promised()
    {
        byte[] whole = RecordWholeJob();
        Assert.True(steps > 10_000, $"{steps} steps");
        Assert.InRange(mostLost, 100u, (uint)SampleRecorder.MostLost);
        Assert.True(kills.Count > 100);
        foreach ((int stepsBefore, byte[] left) in kills)
        {
            RecordLog log = LogExamples.Opened(Copy(left));
            byte[] kept = LogExamples.Bytes(log, log.Sessions[0]);
            Assert.True(whole.AsSpan().StartsWith(kept), $"after {stepsBefore} steps");
            Assert.InRange(stepsBefore - SampleSets(kept, 0), 0u, (uint)SampleRecorder.MostLost);
        }
    }

    private byte[] RecordWholeJob()
    {
        RecordLog log = LogExamples.Opened(card);
        SimulatedRun run = new(SimulatedCauses.All[0], Seed);
        CaptureEngine engine = new(run.Board, log, new PlanRecord(), run.Header());
        uint safe = 0;
        uint read = 0;
        run.RunToEnd(now =>
        {
            engine.Step(now);
            steps++;
            LoggedSession session = log.Sessions[0];
            if (session.Length > read)
            {
                safe += SampleSets(LogExamples.Bytes(log, session), (int)read);
                read = session.Length;
            }

            mostLost = Math.Max(mostLost, (uint)steps - safe);
            if (steps % StepsBetweenRestarts == 0)
            {
                kills.Add((steps, BytesOf(card)));
            }
        });
        engine.End(SessionEndReason.Button, run.NowMicroseconds);
        return LogExamples.Bytes(log, log.Sessions[0]);
    }

    private static uint SampleSets(byte[] bytes, int from)
    {
        RecordScan scan = new(bytes, from, bytes.Length - from);
        SampleBlock block = new();
        uint sets = 0;
        while (scan.MoveNext())
        {
            if (scan.Envelope.Code == RecordCode.SampleBlock)
            {
                Assert.True(scan.TryReadBody(block));
                sets += (uint)block.Count;
            }
        }

        return sets;
    }

    private static byte[] BytesOf(MemoryStore store)
    {
        byte[] bytes = new byte[store.Length];
        Assert.Equal(bytes.Length, store.Read(0, bytes, 0, bytes.Length));
        return bytes;
    }

    private static MemoryStore Copy(byte[] bytes)
    {
        MemoryStore store = new(4_000_000);
        Assert.True(store.Write(0, bytes, 0, bytes.Length));
        return store;
    }
}
