using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Sessions;

/// <summary>A session's records, decoded. Times stay in microseconds since the logger's boot, readings in its own units.</summary>
public sealed class RecordedSession
{
    public required SessionHeader Header { get; init; }

    public PlanRecord? Plan { get; init; }

    public IReadOnlyList<HoldRecord> Holds { get; init; } = [];

    public IReadOnlyList<EngagementRecord> Engagements { get; init; } = [];

    public IReadOnlyList<RunUpRecord> RunUps { get; init; } = [];

    public IReadOnlyList<EventRecord> Events { get; init; } = [];

    public IReadOnlyList<DropoutRecord> Dropouts { get; init; } = [];

    /// <summary>Null where the session was cut: battery off, card pulled.</summary>
    public SessionEnd? End { get; init; }

    /// <summary>All sample sets in order of time. Whoever wants some asks for <see cref="SamplesBetween"/>.</summary>
    public IReadOnlyList<RecordedSample> Samples { get; init; } = [];

    /// <summary>Where records were damaged or are missing, in order.</summary>
    public IReadOnlyList<SessionGap> Gaps { get; init; } = [];

    /// <summary>A moment of the logger's clock as seconds since the session began.</summary>
    public double SecondsAt(long microseconds) => (microseconds - Header.StartMicroseconds) / 1e6;

    /// <summary>Which sample set is the first at or after a moment; their count where none is.</summary>
    public int IndexAt(long microseconds) => Samples is StoredSamples stored ? stored.IndexAt(microseconds) : IndexAt(Samples, 0, Samples.Count, microseconds);

    /// <summary>The same among some of them, which are in order of time.</summary>
    internal static int IndexAt(IReadOnlyList<RecordedSample> samples, int low, int high, long microseconds)
    {
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = samples[middle].Microseconds < microseconds ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>The sample sets from one moment to another, both included, in microseconds since the logger's boot.</summary>
    public IEnumerable<RecordedSample> SamplesBetween(long from, long to) => Samples is StoredSamples stored
        ? stored.Between(from, to)
        : Samples.Where(sample => sample.Microseconds >= from && sample.Microseconds <= to);

    /// <summary>The same for who wants a million of them: some at a time, in a place that is used again. Safe to call from several threads.</summary>
    public void VisitSamples(long from, long to, SampleVisitor visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        if (Samples is StoredSamples stored)
        {
            stored.Visit(from, to, visit);
        }
        else
        {
            visit([.. SamplesBetween(from, to)]);
        }
    }

    /// <summary>The same session, but for these engagements.</summary>
    public RecordedSession With(IReadOnlyList<EngagementRecord> engagements) => new()
    {
        Header = Header,
        Plan = Plan,
        Holds = Holds,
        Engagements = engagements,
        RunUps = RunUps,
        Events = Events,
        Dropouts = Dropouts,
        End = End,
        Samples = Samples,
        Gaps = Gaps,
    };
}

/// <summary>Looks at sample sets in order of time. They stand there until it returns.</summary>
public delegate void SampleVisitor(ReadOnlySpan<RecordedSample> samples);

/// <summary>One sample set; a reading is <see cref="SampleSet.Missing"/> where there is none.</summary>
public readonly record struct RecordedSample(long Microseconds, int SpeedTenths, int MainCounts, int ClutchCounts, int ConverterCounts)
{
    /// <summary>The reading of a <see cref="Channel"/>, in the logger's own unit.</summary>
    public int Of(int channel) => channel switch
    {
        Channel.Speed => SpeedTenths,
        Channel.Main => MainCounts,
        Channel.Clutch => ClutchCounts,
        _ => ConverterCounts,
    };
}
