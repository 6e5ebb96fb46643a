using System;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Shop.Traces;

/// <summary>
/// The lowest, the highest and the mean reading of a stretch, in the channel's own units; a count of 0 where there is none. The line of a picture
/// goes through the mean: a lone spike hardly bends it, and shows in the extremes.
/// </summary>
internal readonly record struct Extremes(int Low, int High, long Sum, int Count)
{
    public static readonly Extremes None;

    public bool IsNone => Count == 0;

    public double Mean => (double)Sum / Count;

    public static Extremes Of(int raw) => raw == SampleSet.Missing ? None : new(raw, raw, raw, 1);

    public Extremes With(in Extremes other) =>
        IsNone ? other : other.IsNone ? this : new Extremes(Math.Min(Low, other.Low), Math.Max(High, other.High), Sum + other.Sum, Count + other.Count);
}
