using System;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Shop.Traces;

/// <summary>The lowest and highest reading of a stretch, in the channel's own units; <see cref="SampleSet.Missing"/> twice where there is none.</summary>
internal readonly record struct Extremes(int Low, int High)
{
    public static readonly Extremes None = new(SampleSet.Missing, SampleSet.Missing);

    public bool IsNone => Low == SampleSet.Missing;

    public static Extremes Of(int raw) => new(raw, raw);

    public Extremes With(Extremes other) => IsNone ? other : other.IsNone ? this : new Extremes(Math.Min(Low, other.Low), Math.Max(High, other.High));
}
