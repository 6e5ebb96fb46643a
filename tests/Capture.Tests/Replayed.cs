using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Replay;

namespace LoggerBox.Capture.Tests;

/// <summary>Rows put together in a test or read from a recording, run through the capture engine, and the records that came out.</summary>
internal sealed class Replayed
{
    /// <summary>100 pascal a count, so that test pressures in kPa are tens of counts.</summary>
    public const int PascalPerCount = 100;

    public List<HoldRecord> Holds { get; } = [];

    public List<EngagementRecord> Engagements { get; } = [];

    public List<RunUpRecord> RunUps { get; } = [];

    public List<EventRecord> Events { get; } = [];

    public List<DropoutRecord> Dropouts { get; } = [];

    public SessionEnd? End { get; private set; }

    public static Replayed Run(IReadOnlyList<Row> rows, PlanRecord? plan = null)
    {
        int[][] values = new int[Channel.Count][];
        values[Channel.Speed] = rows.Select(row => row.Rpm is { } rpm ? (int)Math.Round(rpm * 10) : SampleSet.Missing).ToArray();
        values[Channel.Main] = rows.Select(row => Counts(row.MainKilopascal)).ToArray();
        values[Channel.Clutch] = rows.Select(row => Counts(row.ClutchKilopascal)).ToArray();
        values[Channel.Converter] = rows.Select(row => Counts(row.ConverterKilopascal)).ToArray();
        var recording = new TruckSimulator.Replay.Recording(
            rows.Select(row => (long)Math.Round(row.Seconds * 1e6)).ToArray(),
            values,
            rows.Select(row => row.Gear).ToArray(),
            rows.Select(row => row.Mark).ToArray(),
            rows.Select(_ => SampleSet.Missing).ToArray(),
            [Pressure(), Pressure(), Pressure()],
            rows.Any(row => row.Gear != Gear.Unknown));
        return Read(ReplayRun.Capture(recording, plan ?? new PlanRecord()));
    }

    /// <summary>One column of a recording under tests/recordings as engine speed.</summary>
    public static List<Row> SpeedColumn(string path, string column)
    {
        return Recording.Column(path, column).Select(point => new Row(point.Seconds, point.Value)).ToList();
    }

    private static Replayed Read(byte[] bytes)
    {
        Replayed replayed = new();
        RecordScan scan = new(bytes, 0, bytes.Length);
        while (scan.MoveNext())
        {
            replayed.Take(scan);
        }

        return replayed;
    }

    private void Take(RecordScan scan)
    {
        switch (scan.Envelope.Code)
        {
            case RecordCode.Hold:
                Holds.Add(Body(scan, new HoldRecord()));
                break;
            case RecordCode.Engagement:
                Engagements.Add(Body(scan, new EngagementRecord()));
                break;
            case RecordCode.RunUp:
                RunUps.Add(Body(scan, new RunUpRecord()));
                break;
            case RecordCode.Event:
                Events.Add(Body(scan, new EventRecord()));
                break;
            case RecordCode.Dropout:
                Dropouts.Add(Body(scan, new DropoutRecord()));
                break;
            case RecordCode.SessionEnd:
                End = Body(scan, new SessionEnd());
                break;
            default:
                break;
        }
    }

    private static T Body<T>(RecordScan scan, T record)
        where T : IRecord => scan.TryReadBody(record) ? record : throw new InvalidDataException($"{scan.Envelope.Code} cannot be read");

    private static int Counts(double? kilopascal) =>
        kilopascal is { } value ? (int)Math.Round(value * 1000 / PascalPerCount) : SampleSet.Missing;

    private static ChannelCalibration Pressure() => new() { Kind = ChannelKind.RecordedPressure, SpanCounts = 1, SpanPascal = PascalPerCount };
}

internal sealed record Row(
    double Seconds,
    double? Rpm,
    double? MainKilopascal = null,
    double? ClutchKilopascal = null,
    double? ConverterKilopascal = null,
    Gear Gear = Gear.Unknown,
    Step Mark = Step.None);
