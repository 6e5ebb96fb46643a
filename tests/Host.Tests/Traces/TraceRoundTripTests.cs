using System;
using System.Collections.Generic;
using LoggerBox.Host.Report;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Traces;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Traces;

public class TraceRoundTripTests
{
    [Theory]
    [InlineData(PressureUnit.Psi)]
    [InlineData(PressureUnit.Kilopascal)]
    [InlineData(PressureUnit.Bar)]
    [InlineData(PressureUnit.KilogramForcePerSquareCentimetre)]
    public void A_session_written_as_a_trace_and_read_again_is_the_same(PressureUnit unit)
    {
        int seed = Environment.TickCount;
        var random = new Random(seed);
        for (int i = 0; i < 20; i++)
        {
            RecordedSession session = Session(random);
            Trace trace = TraceText.Read(CsvExport.Render(session, "round trip", unit));
            Assert.Equal(session.Samples.Count, trace.Count);
            for (int row = 0; row < trace.Count; row++)
            {
                string where = $"seed {seed}, session {i}, row {row}";
                RecordedSample sample = session.Samples[row];
                Assert.True(sample.Microseconds - session.Header.StartMicroseconds == trace.Microseconds[row], where);
                Assert.True(sample.SpeedTenths == trace.SpeedTenths![row], where);
                Assert.True(sample.MainCounts == Counts(trace.Main!, row, session.Header.Pressures[0]), where);
                Assert.True(sample.ClutchCounts == Counts(trace.Clutch!, row, session.Header.Pressures[1]), where);
                Assert.True(Said(session, EventKind.GearTag, sample, (int)Gear.Unknown) == (int)trace.Gears![row], where);
                Assert.True(Said(session, EventKind.StepMark, sample, (int)Step.None) == (int)trace.Steps![row], where);
            }

            Assert.Null(trace.Converter);
        }
    }

    private static int Counts(PressureColumn column, int row, ChannelCalibration calibration) =>
        column.TryGet(row, out double pascal)
            ? (int)Math.Round(pascal * calibration.SpanCounts / calibration.SpanPascal) + calibration.ZeroCounts
            : SampleSet.Missing;

    private static int Said(RecordedSession session, EventKind kind, RecordedSample sample, int value)
    {
        foreach (EventRecord happening in session.Events)
        {
            value = happening.Kind == kind && happening.Microseconds <= sample.Microseconds ? happening.Value : value;
        }

        return value;
    }

    private static RecordedSession Session(Random random)
    {
        var header = new SessionHeader { StartMicroseconds = random.NextInt64(1L << 40) };
        header.Pressures[0] = ChannelRange.Parse("0..500psi").ToCalibration();
        header.Pressures[1] = new ChannelCalibration { Kind = ChannelKind.RecordedPressure, SpanPascal = 50 };
        var samples = new List<RecordedSample>();
        var events = new List<EventRecord>
        {
            new() { Kind = EventKind.GearTag, Value = (int)Gear.Neutral, Microseconds = header.StartMicroseconds },
            new() { Kind = EventKind.StepMark, Value = (int)Step.Zero, Microseconds = header.StartMicroseconds },
        };
        long time = header.StartMicroseconds;
        for (int i = random.Next(1, 60); i >= 0; i--)
        {
            samples.Add(new RecordedSample(time, Value(random, 0, 32_768), Value(random, -5000, 32_000), Value(random, -30_000, 30_001), SampleSet.Missing));
            time += random.Next(1, 200_000);
            if (random.Next(4) == 0)
            {
                bool gear = random.Next(2) == 0;
                events.Add(new EventRecord { Kind = gear ? EventKind.GearTag : EventKind.StepMark, Value = random.Next(gear ? 4 : 15), Microseconds = time });
            }
        }

        return new RecordedSession { Header = header, Samples = samples, Events = events };
    }

    private static int Value(Random random, int from, int to) => random.Next(10) == 0 ? SampleSet.Missing : random.Next(from, to);
}
