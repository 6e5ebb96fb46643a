using System;
using System.Collections.Generic;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Tests.Encoding;

namespace LoggerBox.Benchmarks.Day;

/// <summary>
/// Eight hours at 100 sample sets a second, as a logger stores them: the generated ten minutes 48 times over with other seeds, and between them,
/// once an hour, the holds, engagements and run-ups of a whole test, as the capture engine wrote them.
/// </summary>
internal sealed class DayRecording
{
    public const int Sets = Pieces * GeneratedTrace.Sets;

    private const int Pieces = 48;
    private const int PiecesAnHour = 6;
    private const long Piece = (long)GeneratedTrace.Sets * GeneratedTrace.IntervalMicroseconds;

    private readonly List<byte> bytes = [];
    private readonly RecordWriter writer = new();
    private readonly SampleBlock block = new();
    private readonly SampleSet sample = new();
    private uint sequence;

    private DayRecording(double sigma, TestRecords test)
    {
        Append(test.Header);
        block.Begin(GeneratedTrace.IntervalMicroseconds);
        for (int piece = 0; piece < Pieces; piece++)
        {
            Add(GeneratedTrace.Counts(sigma, 0, piece + 1), piece * Piece);
            if (piece % PiecesAnHour == 0)
            {
                test.At(piece * Piece, Append);
            }
        }

        CloseBlock();
        Append(new SessionEnd { Microseconds = Pieces * Piece, Reason = SessionEndReason.EndOfRecording });
        Bytes = [.. bytes];
    }

    /// <summary>The session's record bytes.</summary>
    public byte[] Bytes { get; }

    /// <param name="sigma">Noise of a reading in counts.</param>
    public static DayRecording Of(double sigma, TestRecords test) => new(sigma, test);

    /// <summary>The same as it comes over the line, in answers of a kilobyte.</summary>
    public byte[] Frames()
    {
        List<byte> wire = [];
        FrameEncoder encoder = new();
        Data data = new() { Tag = 1 };
        for (int at = 0; at < Bytes.Length; at += Data.MaxPayload)
        {
            data.Offset = (uint)at;
            data.Length = Math.Min(Data.MaxPayload, Bytes.Length - at);
            Bytes.AsSpan(at, data.Length).CopyTo(data.Payload);
            wire.AddRange(encoder.Frame.AsSpan(0, encoder.Encode(data)));
        }

        return [.. wire];
    }

    /// <summary>Every sample set that it holds, for those who store them otherwise.</summary>
    public static IEnumerable<(long Microseconds, short[] Counts)> SampleSets(double sigma)
    {
        for (int piece = 0; piece < Pieces; piece++)
        {
            short[] counts = GeneratedTrace.Counts(sigma, 0, piece + 1);
            for (int i = 0; i < GeneratedTrace.Sets; i++)
            {
                yield return ((piece * Piece) + (i * (long)GeneratedTrace.IntervalMicroseconds), counts[(i * Channel.Count)..((i + 1) * Channel.Count)]);
            }
        }
    }

    private void Add(short[] counts, long start)
    {
        for (int i = 0; i < GeneratedTrace.Sets; i++)
        {
            sample.Microseconds = start + (i * (long)GeneratedTrace.IntervalMicroseconds);
            for (int c = 0; c < Channel.Count; c++)
            {
                sample.Values[c] = counts[(i * Channel.Count) + c] + (c == Channel.Speed ? SampleBlock.SpeedMiddleTenths : 0);
            }

            if (!block.TryAdd(sample))
            {
                CloseBlock();
                block.TryAdd(sample);
            }
        }
    }

    private void CloseBlock()
    {
        Append(block);
        block.Begin(GeneratedTrace.IntervalMicroseconds);
    }

    private void Append(IRecord record) => bytes.AddRange(writer.Bytes.AsSpan(0, writer.Write(record, 1, 1, sequence++)));
}
